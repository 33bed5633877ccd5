// What the page loads after itself, when each thing is a file beside it.
// `assets-single.ts` offers the same names for the page in one file; the
// bundler picks one of the two for `#assets`.

import { workerAddress } from "./trusted-address";

// Names of emitted files, put in by the build.
declare const CORE_URL: string;
declare const WORKER_URL: string;
declare const OUTPUTS_URL: string;
declare const OUTPUTS_WORKER_URL: string;
declare const SERVICE_WORKER_URL: string;

/** Fetches and compiles the core. Hand the module to `init` and to the worker. */
export const coreModule = (): Promise<WebAssembly.Module> => compiled(CORE_URL);

async function compiled(address: string): Promise<WebAssembly.Module> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  return WebAssembly.compileStreaming(response);
}

/** Starts the worker; it waits for the core's module as its first message. */
export function startWorker(): Worker {
  return new Worker(workerAddress(WORKER_URL));
}

/** What makes papers, fetched and compiled when it is asked for; null where the
 * page does not have it. */
export const outputs: { module(): Promise<WebAssembly.Module>; start(): Worker } | null = {
  module: () => compiled(OUTPUTS_URL),
  start: () => new Worker(workerAddress(OUTPUTS_WORKER_URL)),
};

/** The starter of this name, as a file. */
export async function starter(name: string): Promise<string> {
  const address = `starters/${name}.spread.json`;
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  return response.text();
}

/** Address of the service worker, or null where there can be none. */
export const serviceWorkerUrl: string | null = SERVICE_WORKER_URL;
