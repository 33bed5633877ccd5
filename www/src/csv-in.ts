// A list from a file of another program: read in the worker that makes papers,
// looked through by the core, and told before anything of it is kept.

import { outputs } from "#assets";
import * as say from "#words";

import { freshId } from "./fresh";
import * as mine from "./mine";
import type { OutputAnswer, OutputAsk, ReadList } from "./outputs";
import type { Kept } from "./store";

/** Longest file looked into, bytes. */
const LONGEST = 2_000_000;

/** What came of a file. */
export interface Import {
  /** Things to be kept, and whether the shelf has them already. */
  good: { id: string; title: string; file: string; there: boolean }[];
  /** The line of each row that was not read, and why. */
  bad: [number, string][];
  passed_over: string[];
}

/** Reads a list; throws what is wrong with it, in words. */
export async function read(file: File): Promise<Import> {
  if (outputs === null) throw new Error(say.outputSingle);
  if (file.size === 0) throw new Error(say.csvEmpty({ file: file.name }));
  if (file.size > LONGEST) throw new Error(say.csvLong({ file: file.name }));
  const list = await asked(new Uint8Array(await file.arrayBuffer()));
  const fresh = [...list.lines].map(() => freshId());
  const files = mine.mine.value.map((kept) => kept.file);
  const read = mine.knowing().shelf_read(list.head, list.cells, list.lines, fresh, files) as Import;
  const bad = [...read.bad, ...list.faults].sort(([a], [b]) => a - b);
  return { ...read, bad };
}

/** Has the worker read it. */
async function asked(bytes: Uint8Array): Promise<ReadList> {
  if (outputs === null) throw new Error(say.outputSingle);
  let module: WebAssembly.Module;
  try {
    module = await outputs.module();
  } catch {
    throw new Error(say.outputNotHere);
  }
  const worker = outputs.start();
  try {
    return await new Promise((resolve, reject) => {
      worker.onerror = (event) => {
        event.preventDefault();
        reject(new Error(event.message));
      };
      worker.onmessage = ({ data }: MessageEvent<OutputAnswer>) => {
        if ("list" in data) resolve(data.list);
        else if ("fault" in data) reject(new Error(data.fault));
      };
      worker.postMessage({ make: "list", bytes, module } satisfies OutputAsk);
    });
  } finally {
    worker.terminate();
  }
}

/** Keeps what was read well. */
export function take({ good }: Import): Promise<boolean> {
  const now = Date.now();
  const put = good.map(({ id, title, file }): Kept => ({ id, title, file, upto: 0, changed: now, thing: true }));
  return mine.change(say.csvTaken({ count: put.length }), put);
}
