// One open layout: every act goes through here, is drawn, kept and read again;
// after a fall of the core a fresh one goes on with what was open.

import { batch } from "@preact/signals";
import { Planner } from "#core";
import * as say from "#words";

import { painted } from "./after";
import type { Marks } from "./asked";
import type { Done, Id, Layout, Thing } from "./core";
import { remedyDone } from "./done";
import { freshId } from "./fresh";
import * as keeping from "./keeping";
import * as readings from "./readings";
import * as state from "./state";
import * as store from "./store";
import * as visits from "./visits";

export { settled } from "./keeping";

let planner: Planner;
let compile: () => Planner;
let afresh: () => void;
let undrawn: (error: unknown) => void;
let scale = 1;
let drawing: Roots | undefined;
/** Whether what is open has been drawn. */
export let drawn = false;
/** Whether it is on its way: it is drawn at the end of it. */
let opening = false;
/** How often anything was opened. */
export let openings = 0;

/** Whether what is open came by a link, and is kept nowhere. */
export let linked = false;

/** One more core, for a layout that is not open; to be freed. */
export const another = (): Planner => compile();

/** The core in use. After a trap it is another instance with the same layout. */
export const core = (): Planner => planner;

/**
 * Starts with a core. `more` makes another; `reset` puts a fresh instance under
 * all made after a trap; `fell` is told of one outside of an act.
 */
export function begin(more: () => Planner, reset: () => void, fell: (error: unknown) => void): void {
  compile = more;
  afresh = reset;
  undrawn = fell;
  planner = more();
  keeping.begin(core);
}

/** Whether the core fell: its instance is of no use after it. */
export const isFall = (error: unknown): boolean =>
  error instanceof WebAssembly.RuntimeError || error instanceof RangeError;

/** Starts a fresh core, with a layout and the steps kept of it. */
export function renew(layout?: Layout): void {
  afresh();
  planner = compile();
  if (layout === undefined) linked = false;
  if (layout !== undefined) openShelf(planner, keeping.shelf(JSON.stringify(layout)));
  if (drawing !== undefined) planner.draw_into(...drawing);
}

/** The same with what is open, where the core fell over something else. */
export function goOn(): void {
  renew(state.layout.value);
  if (state.layout.value !== undefined) redraw();
}

/** Draws; a fall of the core over it is told of. */
function draws(run: () => void): void {
  if (opening) return;
  try {
    run();
  } catch (error) {
    if (!isFall(error)) throw error;
    undrawn(error);
  }
}

/** Where the things are drawn, and where what is written over them. */
type Roots = readonly [SVGGElement, SVGGElement];

/** Draws into `roots`, one drawing at a time. */
export function drawInto(roots: Roots, perPixel: number): void {
  drawing = roots;
  scale = perPixel;
  planner.draw_into(...roots);
  redraw();
}

export function setScale(perPixel: number): void {
  if (Math.abs(perPixel / scale - 1) < 0.02) return;
  scale = perPixel;
  redraw();
}

/** Whether a drawing is asked for. */
let asked = false;

function ask(soon: (run: () => void) => void): void {
  asked = true;
  soon(() => {
    if (asked) draws(patch);
  });
}

/** Brings the drawing to the layout: once before the next frame, however often it is asked for. */
export const redraw = (): void => ask(queueMicrotask);
/** The same once it was seen that something else is to be shown. */
export const redrawAfter = (): void => ask(painted);

function patch(): void {
  asked = false;
  if (drawing === undefined) return;
  const early = state.early.value;
  const hands = early ? -1 : state.exposure.value;
  planner.work_in(state.workedIn.value);
  planner.view(scale, hands, state.crops.value);
  planner.see_through(state.through.value);
  planner.show_about(state.rigged.value, state.lit.value);
  planner.show_places(state.seated.value);
  planner.show_notes(state.noted.value);
  planner.patch();
  drawn = true;
}

/** The marks of findings told last, and the ghosts shown in their place. */
let marks: Marks = { numbers: new Float64Array(), words: "" };
let ghosts: readonly string[] = [];

/** Shows marks of findings on the picture, unless ghosts are shown there. */
export function showMarks(told: Marks): void {
  marks = told;
  if (ghosts.length === 0) planner.show_marks(marks.numbers, marks.words);
}

/** Shows where things would stand after these edits instead; of none, the marks again. */
export function showGhosts(records: readonly string[]): void {
  ghosts = records;
  if (ghosts.length === 0) return showMarks(marks);
  planner.see_through(state.through.value);
  planner.pick_ghosts([...records]);
  planner.show_marks(planner.marks_numbers(), planner.marks_words());
}

/** Reads everything the panels show. */
export function refresh(): void {
  batch(() => {
    state.layout.value = planner.layout() as Layout;
    state.things.value = planner.things() as Thing[];
    state.arrangeable.value = planner.is_arrangeable() && !state.readOnly.value;
    state.undoable.value = planner.can_undo();
    state.redoable.value = planner.can_redo();
    const exists = state.chosen.value !== undefined && planner.has(state.chosen.value);
    if (!exists) choose(undefined);
    if (state.picked.value.length > 0) {
      state.picked.value = [...planner.picked(Uint16Array.from(state.picked.value))];
    }
    const cropped = state.layout.value.crops.some(({ id }) => id === state.crop.value);
    if (!cropped) state.crop.value = undefined;
    const exposed = state.layout.value.exposures?.some(({ id }) => id === state.exposure.value);
    if (state.exposure.value > 0 && exposed !== true) state.exposure.value = -2;
  });
}

/** Runs one act on the core: what it did is drawn, read, kept and said. */
export function act(run: () => unknown): boolean {
  if (state.readOnly.value) {
    state.fault.value = state.fromNewer.value ? say.newerFileRefused : say.onlyShownRefused;
    return false;
  }
  if (state.stage.value === "day") {
    state.fault.value = say.dayRefused;
    return false;
  }
  let done: Done | undefined;
  const before = state.layout.value;
  try {
    done = run() as Done | undefined;
    if (done === undefined) return false;
    // What cannot be shown is not kept.
    refresh();
    patch();
  } catch (error) {
    refused(error, before);
    return false;
  }
  const { name, edit } = done;
  state.fault.value = "";
  state.lastAct.value = name;
  keeping.act(done);
  readings.edited(edit);
  void readings.settled().then(() => speak(name));
  return true;
}

/** Says what was done and what now matters most, to those who do not see it. */
function speak(done: string): void {
  const first = state.report.value?.findings.find((finding) => finding.rank <= 2);
  state.said.value =
    first === undefined
      ? say.actSaidAlone({ act: done })
      : say.actSaid({ act: done, sentence: first.sentence });
}

/** Says what went wrong; after a trap a fresh core has the layout as it was before. */
function refused(error: unknown, before: Layout | undefined): void {
  if (!isFall(error)) {
    state.fault.value = say.refusedAct({ why: message(error) });
    return;
  }
  draws(() => {
    renew(before);
    read();
    patch();
  });
  state.fault.value = say.stoppedAct;
}

export function message(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** Brings the layout to a changed copy of itself, as one edit. */
export const become = (name: string, to: Layout): boolean =>
  act(() => planner.become_json(name, JSON.stringify(to), visits.now()));
export const moveBy = (id: Id, dx: number, dy: number): boolean =>
  act(() => planner.move_by(id, state.inside.value, dx, dy, performance.now()));
export const turnBy = (id: Id, halfDegrees: number): boolean =>
  act(() => planner.turn_by(id, halfDegrees, performance.now()));
export const remove = (ids: Id[]): boolean => act(() => planner.remove(Uint16Array.from(ids)));
/** Lays the same thing again beside itself. */
export const repeat = (id: Id): boolean => act(() => planner.repeat(id, state.inside.value));
export const undo = (): boolean => act(() => planner.undo());
export const redo = (): boolean => act(() => planner.redo());
/** Does what the finding of this key proposes. */
export function remedy(key: string): boolean {
  const found = state.report.value?.findings.find((finding) => finding.key === key)?.remedy;
  if (!found) return false;
  const lying = state.layout.value?.linens ?? [];
  if (!act(() => planner.make_record(found.act, found.record))) return false;
  state.lastAct.value = remedyDone(found.act, lying);
  return true;
}
/** Makes these edits as one act. */
export const makeRecords = (name: string, records: readonly string[]): boolean =>
  act(() => planner.make_records(name, [...records]));
/** Ends a drag or a turn as one edit. */
export const drop = (): boolean => act(() => planner.drop());
/** Lays a table of one's own, board, frame, settings and dishes in one go, as a new layout. */
export async function layTable(wish: unknown): Promise<void> {
  await keeping.settled();
  planner.lay(wish);
  await opened(0);
  await keepNow();
}
/** Sets one hand, or two of one person, to an action on a thing. */
export const addHands = (wish: unknown): boolean => act(() => planner.add_hands(wish));

/** Chooses a thing with its group, or `inside` its group the thing alone; or nothing. */
export function choose(id: Id | undefined, inside = false): void {
  batch(() => {
    state.chosen.value = id;
    if (id !== undefined) {
      state.picked.value = [];
      state.picking.value = false;
    }
    state.inside.value = inside && id !== undefined;
  });
}

/** Opens a layout file as the one worked on, and keeps it. */
export async function openFile(text: string): Promise<void> {
  try {
    planner.open_json(text);
    await opened(0);
  } catch (error) {
    if (isFall(error)) undrawn(error);
    throw error;
  }
  await keepNow();
}

/** Shows what a link carries; nothing of it is kept. */
export function openLink(payload: string): void {
  state.fromNewer.value = planner.open_link(payload);
  state.readOnly.value = state.fromNewer.value;
  linked = true;
  read();
  keeping.opened(0);
}

/**
 * Keeps the layout just opened as it is, where this page may: one of a newer
 * planner would lose what only that one knows, and one that another tab has
 * open what that one does.
 */
async function keepNow(): Promise<void> {
  if (!state.readOnly.value) await keeping.whole();
  await listKept();
}

/** What a core has just opened is the layout worked on: so many of its steps are done, as kept. */
export async function opened(...as: Parameters<typeof keeping.opened>): Promise<void> {
  keeping.opened(...as);
  linked = false;
  [drawn, opening] = [false, true];
  openings += 1;
  choose(undefined);
  state.picked.value = [];
  state.picking.value = false;
  state.crop.value = undefined;
  state.openFinding.value = undefined;
  state.lastAct.value = "";
  state.exposure.value = -2;
  state.adding.value = false;
  state.arranging.value = false;
  state.fromNewer.value = planner.is_newer();
  state.readOnly.value = state.fromNewer.value || !(await store.becomeWriter(planner.id));
  try {
    // What follows a signal may ask for a drawing at once.
    read();
    patch();
    opening = false;
  } catch (error) {
    // After a fall nothing is drawn until something else is open.
    opening = isFall(error);
    throw error;
  }
  const last = { key: LAST, changed: Date.now(), text: planner.id };
  // Where it cannot be kept, the layout last changed is opened next; nothing is lost.
  if (!state.fromNewer.value) void store.note(last).catch(() => undefined);
}

/** Has what is open read anew. */
export function read(): void {
  refresh();
  readings.opened(planner.save_json());
}

/** Opens a layout as kept; says what had to be left out. */
export function openShelf(into: Planner, { kept, at, steps }: store.Shelf): string {
  const numbers = Uint32Array.from(steps, (step) => step.number);
  return into.open_kept(kept.file, kept.upto, at, numbers, steps.map((step) => step.record));
}

/** Lists what is kept here; nothing where the device keeps nothing. */
export async function listKept(): Promise<void> {
  state.kept.value = await store.everything().catch(() => []);
}

/** Kept with the layouts: what else a page may keep is written some seconds later, too late for a browser that ends at once. */
const LAST = "last";
/** The layout last worked on here. */
export const lastOpen = async (): Promise<string | undefined> => (await store.noted(LAST))?.text;

/** Opens the demonstration table, or a copy where that was worked on. */
export async function firstVisit(): Promise<void> {
  planner.open_starter();
  // What could not be looked for may be there yet.
  const fresh = await store.load(planner.id).then((found) => found === undefined, () => false);
  if (!fresh) planner.take_copy(freshId());
  state.stage.value = "first";
  await opened(0);
  await keepNow();
}

/** Opens a copy of a file as a new layout of one's own, and keeps it. */
export async function openNew(text: string): Promise<void> {
  await keeping.settled();
  planner.open_json(text);
  await keepCopy(freshId());
}

/** Keeps what a link showed as a layout of one's own. */
export async function keepCopy(id: string): Promise<void> {
  planner.take_copy(id);
  await openFile(planner.save_json());
}
