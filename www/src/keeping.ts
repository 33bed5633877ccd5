// Keeps the open layout: each act as it is made, now and then the whole, and all
// of it afresh with the next act where this device may have lost some.

import type { Planner } from "#core";
import * as say from "#words";

import type { Done } from "./core";
import * as state from "./state";
import * as store from "./store";

/** Acts after which the whole layout is kept anew. */
const SNAPSHOT_EVERY = 24;

let core: () => Planner;
/** The steps of the open layout as they are to be kept, and how many of them are done. */
let steps = new Map<number, string>();
let at = 0;
/** Acts since the whole layout was kept, and the steps done in it. */
let since = 0;
let snapshotAt = 0;
/** Writings are counted: so many were asked for, the last that kept all, and the last that may be lost. */
let asked = 0;
let covered = 0;
let lost = -1;
let queue: Promise<unknown> = Promise.resolve();

/** Starts keeping what a core has open. */
export function begin(open: () => Planner): void {
  core = open;
  store.onLost(() => {
    lost = asked;
    state.saved.value = say.notSaved;
  });
  // The browser asks before it lets go of what is kept nowhere.
  addEventListener("beforeunload", (event) => {
    if (state.saved.value === say.notSaved) event.preventDefault();
  });
}

/** Another layout is open: so many of its steps are done, and so many in the file kept of it. */
export function opened(done: number, upto = done, records: Iterable<readonly [number, string]> = []): void {
  [at, snapshotAt, since, covered, lost] = [done, upto, 0, asked, -1];
  steps = new Map(records);
}

/** Less than all that is kept of it could be opened. */
export const cut = (): void => void (lost = asked);

/** Whether the device may not have all of it. */
const gaps = (): boolean => lost >= covered;

/** The open layout as it is kept now, if it stands as in `file`. */
export function shelf(file: string): store.Shelf {
  const kept = snapshot(file, at);
  return { kept, at, steps: [...steps].map(([number, record]) => ({ layout: kept.id, number, record })) };
}

/** Keeps what came of an act. */
export function act(done: Done): void {
  at = done.at;
  for (const number of [...steps.keys()]) {
    if (number < done.first || number >= done.end) steps.delete(number);
  }
  if (done.record !== null) steps.set(done.at - 1, done.record);
  if (gaps()) return void whole();
  since += 1;
  // A snapshot must lie on the line of steps, where they can lead on from it.
  const changed = done.record === null ? done.end : done.at - 1;
  const astray = snapshotAt > changed || snapshotAt < done.first;
  const due = astray || since >= SNAPSHOT_EVERY;
  if (due) [since, snapshotAt] = [0, at];
  const { id } = core();
  // What was refused may be a gap that later acts do not know of.
  const refused = (error: unknown): Promise<void> | void => (core().id === id ? whole() : notKept(error));
  void written(store.keepAct(id, done, due ? snapshot(core().save_json(), at) : undefined), refused);
}

/** Keeps the open layout whole, with all its steps. */
export function whole(): Promise<void> {
  [since, snapshotAt] = [0, at];
  const number = asked + 1;
  const kept = store.keepWhole(snapshot(core().save_json(), at), steps).then(() => {
    covered = Math.max(covered, number);
  });
  return written(kept, notKept);
}

/** Not one after the other: an act that waited to be handed over would be lost with the one in hand. */
function written(writing: Promise<void>, refused: (error: unknown) => Promise<void> | void): Promise<void> {
  const number = (asked += 1);
  state.saved.value = say.saving;
  const ended = writing.then(() => {
    if (number === asked && !gaps()) state.saved.value = savedWord();
  }, (error: unknown) => {
    lost = Math.max(lost, number);
    return refused(error);
  });
  queue = Promise.all([queue, ended]);
  return ended;
}

export const savedWord = (): string =>
  matchMedia("(pointer: coarse)").matches ? say.savedOnPhone : say.savedOnComputer;

/** Says that this device keeps nothing, and what to do. */
function notKept(error: unknown): void {
  state.saved.value = say.notSaved;
  state.fault.value = say.refusedSaving({ why: error instanceof Error ? error.message : String(error) });
}

export function snapshot(file: string, upto: number): store.Kept {
  const { id, title } = JSON.parse(file) as { id: string; title: string };
  return { id, title, file, upto, changed: Date.now() };
}

/** Waits until everything so far is kept. */
export async function settled(): Promise<void> {
  await queue;
}
