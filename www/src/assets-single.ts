// What the page loads after itself, when all of it is carried within: the core
// and the worker deflated and in base64. See `assets-site.ts`.

import packedCore from "../generated/core.deflate";
import packedStarters from "../generated/starters.deflate";
import packedWorker from "../generated/worker.deflate";
import { workerAddress } from "./trusted-address";

let worker = new Blob();

function unpacked(packed: string): Promise<ArrayBuffer> {
  const bytes = Uint8Array.from(atob(packed), (letter) => letter.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate-raw"));
  return new Response(stream).arrayBuffer();
}

/** Unpacks the worker and the core, and compiles it. Hand the module to `init` and to the worker. */
export async function coreModule(): Promise<WebAssembly.Module> {
  worker = new Blob([await unpacked(packedWorker)], { type: "text/javascript" });
  return WebAssembly.compile(await unpacked(packedCore));
}

/** Starts the worker; it waits for the core's module as its first message. */
export function startWorker(): Worker {
  return new Worker(workerAddress(URL.createObjectURL(worker)));
}

/** What makes papers would make the file a third longer. */
export const outputs: { module(): Promise<WebAssembly.Module>; start(): Worker } | null = null;

/** The starter of this name, as a file. */
export async function starter(name: string): Promise<string> {
  const text = await new Response(await unpacked(packedStarters)).text();
  const file = (JSON.parse(text) as Record<string, string>)[name];
  if (file === undefined) throw new Error(name);
  return file;
}

/** Address of the service worker, or null where there can be none. */
export const serviceWorkerUrl: string | null = null;
