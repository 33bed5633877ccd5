// Papers as files, made in a worker of their own by a module that is fetched
// when the first one is asked for.

import { signal } from "@preact/signals";

import { outputs } from "#assets";
import * as say from "#words";

import type { Entry } from "./dates";
import { share } from "./export";
import * as session from "./session";

/** What is to be made. */
export type Wanted =
  | { make: "pdf"; title: string; pages: readonly string[] }
  | { make: "csv"; rows: readonly (readonly string[])[] }
  | { make: "ics"; days: readonly Entry[]; stamp: readonly number[] };
export type OutputAsk = (Wanted | { make: "list"; bytes: Uint8Array }) & { module: WebAssembly.Module };
/** A list as it was read: the cells of all rows one after another, the line each
 * begins on, and of each that was not read why. */
export interface ReadList {
  head: string[];
  cells: string[];
  lines: Uint32Array;
  faults: [number, string][];
}
/** How far it is, 0 to 1; at the end the file, or why there is none. */
export type OutputAnswer =
  | { done: number }
  | { file: Blob; missing: string }
  | { list: ReadList }
  | { fault: string };

/** The file that is being made, by its name, and how far it is; and what came of
 * the one before. */
export const making = signal<{ name: string; done: number } | undefined>(undefined);
export const told = signal<{ name: string; text: string; print: boolean } | undefined>(undefined);

let worker: Worker | undefined;
/** The one asked for last; what comes of others is dropped. */
let serial = 0;

/** Whether this page makes such files. */
export const able = outputs !== null;

/** Makes a file and hands it out under this name. */
export async function make(name: string, title: string, wanted: () => Wanted): Promise<void> {
  stop();
  if (outputs === null) return;
  const own = serial;
  const end = (text: string, print = false): void => {
    if (own !== serial) return;
    stop();
    told.value = { name, text, print };
  };
  [making.value, told.value] = [{ name, done: 0 }, undefined];
  let module: WebAssembly.Module;
  try {
    module = await outputs.module();
  } catch {
    return end(say.outputNotHere, true);
  }
  if (own !== serial) return;
  try {
    worker = outputs.start();
    worker.onerror = (event) => {
      event.preventDefault();
      end(say.outputNotMade({ why: event.message }), true);
    };
    worker.onmessage = ({ data }: MessageEvent<OutputAnswer>) => {
      if ("done" in data) making.value = { name, done: data.done };
      else if ("fault" in data) end(say.outputNotMade({ why: data.fault }), true);
      else if ("file" in data) {
        const letters = [...data.missing].join(" ");
        end(letters === "" ? say.outputReady : say.outputLetters({ letters }), letters !== "");
        void share(new File([data.file], name, { type: data.file.type }), title);
      }
    };
    const ask: OutputAsk = { ...wanted(), module };
    worker.postMessage(ask);
  } catch (error) {
    end(say.outputNotMade({ why: session.message(error) }), true);
  }
}

/** Gives up what is being made. */
export function stop(): void {
  serial += 1;
  worker?.terminate();
  [worker, making.value] = [undefined, undefined];
}
