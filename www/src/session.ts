// One open layout: every act goes through here, is drawn, kept and read again.

import { batch } from "@preact/signals";
import { Planner } from "#core";
import * as say from "#words";

import type { Marks } from "./asked";
import type { Done, Id, Layout, Thing } from "./core";
import { remedyDone } from "./done";
import { freshId } from "./fresh";
import * as readings from "./readings";
import * as state from "./state";
import * as store from "./store";
import * as visits from "./visits";

/** Acts after which the whole layout is kept anew. */
const SNAPSHOT_EVERY = 24;

let planner: Planner;
let compile: () => Planner;
let afresh: () => void;
/** Acts so far, those since the whole layout was kept, and the steps done in it. */
let acts = 0;
let since = 0;
let snapshotAt = 0;
let scale = 1;
let drawing: Roots | undefined;
let queue: Promise<void> = Promise.resolve();

/** One more core, for a layout that is not open; to be freed. */
export const another = (): Planner => compile();

/** The core in use. After a trap it is another instance with the same layout. */
export const core = (): Planner => planner;

/** Starts with a core. `more` makes another; `reset` puts a fresh instance under all made after a trap. */
export function begin(more: () => Planner, reset: () => void): void {
  compile = more;
  afresh = reset;
  planner = more();
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

let drawn = true;

/** Brings the drawing to the layout: once before the next frame, however often it is asked for. */
export function redraw(): void {
  if (!drawn) return;
  drawn = false;
  queueMicrotask(draw);
}

function draw(): void {
  drawn = true;
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
  try {
    done = run() as Done | undefined;
  } catch (error) {
    refused(error);
    return false;
  }
  if (done === undefined) return false;
  state.fault.value = "";
  refresh();
  redraw();
  state.lastAct.value = done.name;
  readings.edited(done.edit);
  void readings.settled().then(() => speak(done.name));
  keep(done);
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

/** Says what went wrong; after a trap starts afresh from what was kept. */
function refused(error: unknown): void {
  if (!(error instanceof WebAssembly.RuntimeError)) {
    state.fault.value = say.refusedAct({ why: message(error) });
    return;
  }
  const layout = state.layout.value;
  afresh();
  planner = compile();
  if (layout !== undefined) planner.open_json(JSON.stringify(layout));
  // Its steps are numbered anew, so no snapshot kept before lies on their line.
  snapshotAt = Infinity;
  readings.opened(planner.save_json());
  if (drawing !== undefined) drawInto(drawing, scale);
  refresh();
  state.fault.value = say.stoppedAct;
  // What can be taken back comes from what was kept.
  if (layout !== undefined && !state.readOnly.value) void settled().then(() => restoreSteps(layout.id));
}

/** Takes the steps of the open layout from what was kept of it. */
async function restoreSteps(id: string): Promise<void> {
  const found = await store.load(id);
  if (found === undefined || planner.id !== id) return;
  const now = planner.save_json();
  openShelf(planner, found);
  if (planner.save_json() === now) snapshotAt = found.kept.upto;
  else planner.open_json(now);
  refresh();
  redraw();
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
  await settled();
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

function keep(done: Done): void {
  acts += 1;
  since += 1;
  const [number, { id }] = [acts, planner];
  // A snapshot must lie on the line of steps, where they can lead on from it.
  const changed = done.record === null ? done.end : done.at - 1;
  const astray = snapshotAt > changed || snapshotAt < done.first;
  const whole = astray || since >= SNAPSHOT_EVERY ? snapshot(planner.save_json(), done.at) : undefined;
  if (whole !== undefined) [since, snapshotAt] = [0, done.at];
  state.saved.value = say.saving;
  queue = queue
    .then(() => store.keepAct(id, done, whole))
    .then(() => {
      if (number === acts) state.saved.value = savedWord();
    })
    .catch(notKept);
}

const savedWord = (): string =>
  matchMedia("(pointer: coarse)").matches ? say.savedOnPhone : say.savedOnComputer;

export function snapshot(file: string, upto: number): store.Kept {
  const { id, title } = JSON.parse(file) as { id: string; title: string };
  return { id, title, file, upto, changed: Date.now() };
}

/** Waits until everything so far is kept. */
export const settled = (): Promise<void> => queue;

/** Opens a layout file as the one worked on, and keeps it. */
export async function openFile(text: string): Promise<void> {
  planner.open_json(text);
  await opened(0);
  // Kept here, a file of a newer planner would lose what only that one knows.
  if (!state.fromNewer.value) await keepNow();
}

/** Keeps the layout just opened as it is. */
async function keepNow(): Promise<void> {
  const file = planner.save_json();
  queue = queue
    .then(() => store.keepWhole(snapshot(file, 0)))
    .then(() => void (state.saved.value = savedWord()))
    .catch(notKept);
  await queue;
  await listKept();
}

/** Says that this device keeps nothing, and what to do. */
function notKept(error: unknown): void {
  state.saved.value = say.notSaved;
  state.fault.value = say.refusedSaving({ why: message(error) });
}

async function opened(upto: number): Promise<void> {
  since = 0;
  snapshotAt = upto;
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
  if (!state.fromNewer.value) remember(planner.id);
  read();
  redraw();
}

/** Has what is open read anew. */
export function read(): void {
  refresh();
  readings.opened(planner.save_json());
}

/** Opens what was kept: the snapshot, then the steps from it to where the layout was left. */
export async function openKept(id: string): Promise<boolean> {
  const found = await store.load(id);
  if (found === undefined) return false;
  const left = openShelf(planner, found);
  await opened(found.kept.upto);
  if (left !== "") state.fault.value = left;
  state.saved.value = savedWord();
  return true;
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

const LAST = "overspread-last";
const remember = (id: string): void => {
  try {
    localStorage.setItem(LAST, id);
  } catch {
    // A browser that forbids it opens the first visit again; nothing is lost.
  }
};
/** The layout last worked on here. */
export const lastOpen = (): string | null => {
  try {
    return localStorage.getItem(LAST);
  } catch {
    return null;
  }
};

/** Opens the demonstration table. */
export async function firstVisit(): Promise<void> {
  planner.open_starter();
  state.stage.value = "first";
  await opened(0);
  await keepNow();
}

/** Opens a copy of a file as a new layout of one's own, and keeps it. */
export async function openNew(text: string): Promise<void> {
  await settled();
  planner.open_json(text);
  await keepCopy(freshId());
}

/** Keeps what a link showed as a layout of one's own. */
export async function keepCopy(id: string): Promise<void> {
  planner.take_copy(id);
  await openFile(planner.save_json());
}
