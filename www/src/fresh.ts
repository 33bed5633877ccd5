// New identities.

/** A new identity for a layout: 64 random bits as 16 hex digits. */
export function freshId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(8));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
