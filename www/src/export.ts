// Handing something out: the share sheet where there is one, else a download
// or the clipboard.

export type Sent = "shared" | "copied" | "kept";

/** Saves a file among the device's downloads. */
export function hand(file: File): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = address;
  link.download = file.name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 30_000);
}

const dismissed = (error: unknown): boolean =>
  error instanceof DOMException && error.name === "AbortError";

/** Shares a file, or saves it where files cannot be shared. */
export async function share(file: File, title: string): Promise<Sent> {
  const data = { files: [file], title };
  if (navigator.canShare?.(data) === true) {
    try {
      await navigator.share(data);
      return "shared";
    } catch (error) {
      if (dismissed(error)) return "kept";
    }
  }
  hand(file);
  return "kept";
}

/** Shares words or a link, or puts them on the clipboard. */
export async function shareOrCopy(data: { title: string; url?: string; text?: string }): Promise<Sent> {
  if (navigator.canShare?.(data) === true) {
    try {
      await navigator.share(data);
      return "shared";
    } catch (error) {
      if (dismissed(error)) return "kept";
    }
  }
  await navigator.clipboard.writeText(data.url ?? data.text ?? "");
  return "copied";
}
