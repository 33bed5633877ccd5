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

/**
 * Has a worker do what is asked, in a module that is fetched when first needed.
 * Returns what ends it; throws, in words, when there is none.
 */
export async function ask(
  asked: () => Wanted | { make: "list"; bytes: Uint8Array },
  heard: (answer: OutputAnswer) => void,
  fell: (why: string) => void,
): Promise<() => void> {
  if (outputs === null) throw new Error(say.outputSingle);
  const module = await outputs.module().catch(() => {
    throw new Error(say.outputNotHere);
  });
  const message = { ...asked(), module } satisfies OutputAsk;
  const worker = outputs.start();
  worker.onerror = (event) => {
    event.preventDefault();
    fell(event.message);
  };
  worker.onmessage = ({ data }: MessageEvent<OutputAnswer>) => {
    if ("fault" in data) fell(data.fault);
    else heard(data);
  };
  worker.postMessage(message);
  return () => worker.terminate();
}

/** The file that is being made, by its name, and how far it is; and what came of
 * the one before. */
export const making = signal<{ name: string; done: number } | undefined>(undefined);
export const told = signal<{ name: string; text: string; print: boolean } | undefined>(undefined);

let end: (() => void) | undefined;
/** The one asked for last; what comes of others is dropped. */
let serial = 0;

/** Whether this page makes such files. */
export const able = outputs !== null;

/** Makes a file and hands it out under this name. */
export async function make(name: string, title: string, wanted: () => Wanted): Promise<void> {
  stop();
  if (!able) return;
  const own = serial;
  const tell = (text: string, print = false): void => {
    if (own !== serial) return;
    stop();
    told.value = { name, text, print };
  };
  const fell = (why: string): void => tell(say.outputNotMade({ why }), true);
  const heard = (answer: OutputAnswer): void => {
    if ("done" in answer) making.value = { name, done: answer.done };
    else if ("file" in answer) {
      const letters = [...answer.missing].join(" ");
      tell(letters === "" ? say.outputReady : say.outputLetters({ letters }), letters !== "");
      void share(new File([answer.file], name, { type: answer.file.type }), title);
    }
  };
  [making.value, told.value] = [{ name, done: 0 }, undefined];
  try {
    const ended = await ask(wanted, heard, fell);
    if (own === serial) end = ended;
    else ended();
  } catch (error) {
    tell(session.message(error), true);
  }
}

/** Gives up what is being made. */
export function stop(): void {
  serial += 1;
  end?.();
  [end, making.value] = [undefined, undefined];
}
