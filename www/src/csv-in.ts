// A list from a file of another program: read in the worker that makes papers,
// looked through by the core, and told before anything of it is kept.

import * as say from "#words";

import { freshId } from "./fresh";
import * as mine from "./mine";
import { ask, able } from "./outputs";
import type { OutputAnswer, ReadList } from "./outputs";
import type { Kept } from "./store";

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
  if (!able) throw new Error(say.outputSingle);
  if (file.size === 0) throw new Error(say.csvEmpty({ file: file.name }));
  if (file.size > say.MAX_LIST_BYTES) throw new Error(say.csvLong({ file: file.name }));
  const list = await asked(new Uint8Array(await file.arrayBuffer()));
  const fresh = [...list.lines].map(() => freshId());
  const files = mine.mine.value.map((kept) => kept.file);
  const read = mine.knowing().shelf_read(list.head, list.cells, list.lines, fresh, files) as Import;
  const bad = [...read.bad, ...list.faults].sort(([a], [b]) => a - b);
  return { ...read, bad };
}

/** Has the worker read it. */
async function asked(bytes: Uint8Array): Promise<ReadList> {
  let end: (() => void) | undefined;
  try {
    return await new Promise((resolve, reject) => {
      const fell = (why: string): void => reject(new Error(why));
      const heard = (answer: OutputAnswer): void => {
        if ("list" in answer) resolve(answer.list);
      };
      ask(() => ({ make: "list", bytes }), heard, fell).then((ended) => (end = ended), reject);
    });
  } finally {
    end?.();
  }
}

/** Keeps what was read well. */
export function take({ good }: Import): Promise<boolean> {
  const now = Date.now();
  const put = good.map(({ id, title, file }): Kept => ({ id, title, file, upto: 0, changed: now, thing: true }));
  return mine.change(say.csvTaken({ count: put.length }), put);
}
