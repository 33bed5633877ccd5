// What the page begins with. A link opened where the planner never was shows its
// picture first, drawn by a small module; then the planner comes and takes over.

import init, { Early } from "#early";

// Names of emitted files, put in by the build.
declare const EARLY_URL: string;
declare const MAIN_URL: string;

/** Shows the picture of a link; nothing for what is none, which the planner will say. */
async function show(link: string): Promise<void> {
  await init({ module_or_path: await WebAssembly.compileStreaming(fetch(EARLY_URL)) });
  const seen = Early.of(link);
  const page = document.getElementById("page");
  if (seen === undefined || page === null) return;
  const picture = new Image();
  picture.src = URL.createObjectURL(new Blob([seen.picture], { type: "image/svg+xml" }));
  picture.alt = seen.title;
  const title = document.createElement("h1");
  title.textContent = seen.title;
  const head = document.createElement("header");
  head.className = "head";
  head.append(title);
  const early = document.createElement("div");
  early.id = "early";
  early.className = "sheet";
  early.append(head, picture);
  page.before(early);
  await picture.decode();
}

/** Whether the planner was here before, and is at hand at once; where that may not be asked, it was not. */
function known(): boolean {
  try {
    return Boolean((navigator.serviceWorker as ServiceWorkerContainer | undefined)?.controller);
  } catch {
    return false;
  }
}

async function begin(): Promise<void> {
  const link = location.hash.slice(1);
  if (link !== "" && !known()) await show(link).catch(() => undefined);
  await import(new URL(MAIN_URL, document.baseURI).href);
}
void begin();
