// Two layouts beside each other: which they are, and what a worker of its own
// says of them.

import { signal } from "@preact/signals";
import * as say from "#words";

import type { Change, Compared, ComparedAnswer } from "./asked";
import * as spare from "./spare";

/** One of the two: what it is called, and its file. */
export interface Side {
  name: string;
  file: string;
}

/** The two that are looked at; none when the table is. */
export const sides = signal<readonly [Side, Side] | undefined>(undefined);
/** What is said of them; nothing before both are read. */
export const told = signal<Compared | undefined>(undefined);
export const fault = signal("");
/** The change that is marked in both pictures. */
export const marked = signal<Change | undefined>(undefined);

let end: (() => void) | undefined;

/** Looks at two. */
export function show(before: Side, after: Side): void {
  read(before.file, after.file);
  sides.value = [before, after];
}

/** Has two compared. */
export function read(before: string, after: string): void {
  close();
  const fell = (why: string): void => void (fault.value = say.twoNotRead({ why }));
  const heard = (answer: ComparedAnswer): void => {
    if ("fault" in answer) fell(answer.fault);
    else told.value = answer.compared;
    end?.();
  };
  end = spare.ask({ ask: "compare", before, after }, heard, fell);
}

/** Goes back to the table. */
export function close(): void {
  end?.();
  end = undefined;
  [sides.value, told.value, fault.value, marked.value] = [undefined, undefined, "", undefined];
}
