// What the page loads after itself, when all of it is carried within: the core
// deflated and in base64, the worker as text. See `assets-site.ts`.

import packedCore from "../generated/core.deflate";
import workerText from "../generated/worker.txt";
import { workerAddress } from "./trusted-address";

/** Unpacks and compiles the core. Hand the module to `init` and to the worker. */
export async function coreModule(): Promise<WebAssembly.Module> {
  const packed = Uint8Array.from(atob(packedCore), (letter) => letter.charCodeAt(0));
  const unpacked = new Blob([packed]).stream().pipeThrough(new DecompressionStream("deflate-raw"));
  return WebAssembly.compile(await new Response(unpacked).arrayBuffer());
}

/** Starts the worker; it waits for the core's module as its first message. */
export function startWorker(): Worker {
  const address = URL.createObjectURL(new Blob([workerText], { type: "text/javascript" }));
  return new Worker(workerAddress(address));
}

/** Address of the service worker, or null where there can be none. */
export const serviceWorkerUrl: string | null = null;
