// What the layout reads as. The worker works it out; here its answers are
// awaited, the newest taken and the rest dropped.

import { batch, effect } from "@preact/signals";

import * as say from "#words";
import type {
  Answer, Arranged, ArrangedAnswer, Ask, Marks, Moved, Search, Searched, View,
} from "./asked";
import * as state from "./state";

/** None after it fell over all that is open; the next change starts another. */
let worker: Worker | undefined;
let revision = 0;
let serial = 0;
let inHand: Moved | undefined;
/** The serial of the drag the worker is at; 0 for none. */
let asking = 0;
let waiting: (() => void)[] = [];
let fallen = 0;
/** Whether any worker ever answered; otherwise each change is one more try, and no more. */
let heard = false;

/** What the page does for the readings. */
interface Page {
  /** How far a search is. */
  searched(serial: number, searched: Searched): void;
  start(): Worker;
  module: WebAssembly.Module;
  /** The open layout as a file, for a worker that starts afresh. */
  file(): string;
  show(marks: Marks): void;
}
let page: Page;

const ask = (asked: Ask): void => worker?.postMessage(asked);

/** What is being arranged, and who takes what comes of it. */
let arranging = { serial: 0, take: (_: Arranged): void => undefined };

/** Has the open table arranged, or the one wished for; only the newest is. */
export function arrange(wish: unknown, take: (arranged: Arranged) => void): void {
  const serial = arranging.serial + 1;
  arranging = { serial, take };
  // It takes nothing that is open.
  if (worker === undefined) start();
  ask({ ask: "arrange", serial, wish });
}

/** Starts reading. */
export function begin(own: Page): void {
  page = own;
  start();
  let before = view();
  effect(() => {
    const now = view();
    // With hands, or through another crop, it is to be read anew.
    if (!alike(now, before) && revision > 0) state.reading.value = true;
    before = now;
    ask({ ask: "view", ...now });
  });
}

/** What may be shown all at once in a place. */
const SHOWN_AT: Partial<Record<state.Place, readonly state.Shown[]>> = {
  camera: ["light", "glare"],
  hands: ["exposures"],
};

/** What is looked at now. */
function view(): View {
  const noHands = state.early.value;
  const { firstFinding, openFinding, place, shown } = state;
  const whole = SHOWN_AT[place.value]?.includes(shown.value) === true ? `show:${shown.value}` : "";
  // At the hands one exposure may be worked on alone.
  const alone = place.value === "hands" && state.workedIn.value > 0 && whole !== "";
  const key = noHands ? firstFinding.value?.key : (openFinding.value ?? (alone ? `${whole}${state.workedIn.value}` : whole));
  const [crop, lens] = [state.crop.value ?? 0, state.through.value];
  return { noHands, crop, key: key ?? "", crops: state.crops.value, lens };
}

/** Whether both are read alike. */
const alike = (one: View, other: View): boolean =>
  one.noHands === other.noHands && one.crop === other.crop;

/** Starts a worker, which knows nothing yet of what is open. */
function start(): void {
  worker = page.start();
  worker.onmessage = ({ data }: MessageEvent<Answer | ArrangedAnswer>) => {
    heard = true;
    if (data.tell !== "arranged") return take(data);
    if (data.serial === arranging.serial) arranging.take(data);
  };
  worker.onerror = (event) => {
    event.preventDefault();
    again();
  };
  ask({ ask: "core", module: page.module });
}

/** A worker that fell is replaced; one that falls over the same layout, or at its start, is not. */
function again(): void {
  worker?.terminate();
  worker = undefined;
  asking = 0;
  fallen += 1;
  if (fallen > 1) return stopped();
  afresh(page.file());
}

/** Starts a worker with what is open. */
function afresh(file: string): void {
  start();
  ask({ ask: "view", ...view() });
  ask({ ask: "open", revision, file });
}

/** What is open now may be borne. */
const forgive = (): void => void (fallen = heard ? 0 : Math.min(fallen, 1));

function stopped(): void {
  state.reading.value = false;
  state.fault.value = say.stoppedReading;
  done();
}

function done(): void {
  const all = waiting;
  waiting = [];
  for (const each of all) each();
}

/** Another layout is open. */
export function opened(file: string): void {
  revision += 1;
  forgive();
  state.reading.value = true;
  if (worker === undefined) afresh(file);
  else ask({ ask: "open", revision, file });
}

/** The open layout was changed by this edit. */
export function edited(record: string): void {
  revision += 1;
  forgive();
  letGo();
  state.reading.value = true;
  if (worker === undefined) afresh(page.file());
  else ask({ ask: "edit", revision, record });
}

/** Waits until what is open has been read. */
export function settled(): Promise<void> {
  if (!state.reading.value) return Promise.resolve();
  return new Promise((resolve) => waiting.push(resolve));
}

/** A drag or a turn has come this far; only the newest is read. */
export function moved(to: Omit<Moved, "serial">): void {
  serial += 1;
  inHand = { ...to, serial };
  if (asking === 0 && !state.reading.value) next();
}

function next(): void {
  if (inHand === undefined) return;
  ask({ ask: "drag", revision, ...inHand });
  asking = inHand.serial;
  inHand = undefined;
}

/** Asks for a search from the open layout; what was searched for before is dropped. */
export const search = (number: number, wanted: Search): void =>
  ask({ ask: "search", revision, serial: number, wanted });
export const stopSearch = (): void => ask({ ask: "no-search" });

/** Nothing is in hand any more. */
function letGo(): void {
  serial += 1;
  inHand = undefined;
  asking = 0;
}

/** The drag in hand was given up: what was read before it holds again. */
export function abandoned(): void {
  letGo();
  state.live.value = undefined;
  ask({ ask: "view", ...view() });
}

function take(answer: Answer): void {
  if (answer.revision !== revision) return;
  switch (answer.tell) {
    case "read":
      // Read before the hands or the crop came, or went: the other reading is on its way.
      if (!alike(answer.view, view())) return;
      batch(() => {
        state.report.value = answer.report;
        state.live.value = undefined;
        state.reading.value = false;
      });
      page.show(answer.marks);
      asking = 0;
      next();
      return done();
    case "marks":
      if (state.live.value === undefined) page.show(answer.marks);
      return;
    case "searched":
      return page.searched(answer.serial, answer.searched);
    case "live":
      if (answer.serial !== asking) return;
      asking = 0;
      state.live.value = answer.live;
      page.show(answer.marks);
      next();
  }
}
