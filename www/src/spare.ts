// A worker for one long piece of work, ended when nobody waits for it any more.

import type { Ask } from "./asked";

/** What the page does for it. */
interface Page {
  start(): Worker;
  module: WebAssembly.Module;
}
let page: Page;

export function begin(own: Page): void {
  page = own;
}

/** Has a worker of its own do what is asked; returns what ends it. */
export function ask<Answer>(
  asked: Ask,
  heard: (answer: Answer) => void,
  fell: (why: string) => void,
): () => void {
  const worker = page.start();
  worker.onmessage = ({ data }: MessageEvent<Answer>) => heard(data);
  worker.onerror = (event) => {
    event.preventDefault();
    fell(event.message);
  };
  const tell = (what: Ask): void => worker.postMessage(what);
  tell({ ask: "core", module: page.module });
  tell(asked);
  return () => worker.terminate();
}
