// What a client is about to answer to what a link shows: kept on this device
// until it is sent, and laid on the picture as numbered notes.

import { signal } from "@preact/signals";
import * as say from "#words";

import type { Id, Layout, Pair, Remark, ToldRemark, Verdict } from "./core";
import * as session from "./session";
import * as state from "./state";
import * as store from "./store";

interface Draft {
  verdict: Verdict | undefined;
  by: string;
  /** Which of two is chosen. */
  choice: 0 | 1 | undefined;
  remarks: Remark[];
}
const blank = (): Draft => ({ verdict: undefined, by: "", choice: undefined, remarks: [] });

export const draft = signal<Draft>(blank());
/** The remarks in words. */
export const told = signal<ToldRemark[]>([]);
/** The remark that is being written. */
export const writing = signal<number | undefined>(undefined);
export const open = signal(false);
export const unkept = signal("");
let key = "";

/** Takes up what was begun for the layout a link shows. */
export async function begin(): Promise<void> {
  const layout = session.core().layout() as Layout;
  key = `draft ${layout.id} ${layout.revision.number} ${layout.revision.date}`;
  draft.value = blank();
  [writing.value, open.value, unkept.value] = [undefined, false, ""];
  try {
    const text = (await store.noted(key))?.text;
    if (text !== undefined) draft.value = { ...blank(), ...(JSON.parse(text) as Partial<Draft>) };
  } catch (error) {
    unkept.value = session.message(error);
  }
  // It could not be shown meanwhile.
  if (!session.linked) return;
  open.value = draft.value.remarks.length > 0 || draft.value.verdict !== undefined;
  put();
}

/** Lays the remarks on the picture. */
export function put(): void {
  const core = session.core();
  const layout = core.layout() as Layout;
  core.open_json(JSON.stringify({ ...layout, remarks: draft.value.remarks }));
  core.show_notes(true);
  session.refresh();
  told.value = core.remarks() as ToldRemark[];
}

/** Changes the draft, and keeps it. */
export function change(to: Partial<Draft>): void {
  draft.value = { ...draft.value, ...to };
  if (to.remarks !== undefined) put();
  const noted = { key, changed: Date.now(), text: JSON.stringify(draft.value) };
  store
    .note(noted)
    .then(() => (unkept.value = ""))
    .catch((error: unknown) => (unkept.value = session.message(error)));
}

/** Begins a remark on a thing, or on a bare place. */
export function begun(on: { thing: Id } | { at: Pair }): void {
  open.value = true;
  const { remarks, verdict } = draft.value;
  if (remarks.length >= say.MAX_SENT) return;
  const version = state.layout.value?.revision.number ?? 0;
  const tag = "thing" in on ? state.things.value.find(({ id }) => id === on.thing)?.number : undefined;
  const remark = { version, ...on, ...(tag === undefined || tag === "" ? {} : { tag }), text: "" };
  // Who remarks on something wants it changed, unless they said otherwise.
  change({ remarks: [...remarks, remark], verdict: verdict ?? "changes" });
  writing.value = remarks.length;
}

/** Begins one on what lies at a place of the picture, mm. */
export function tapped(x: number, y: number): void {
  const core = session.core();
  const under = core.seen_at(x, y)[0];
  const at: Pair = [Math.round(x), Math.round(y)];
  begun(under === undefined ? { at } : { thing: core.root(under) });
}

/** Changes one remark. */
export function amend(place: number, to: Partial<Remark>): void {
  const remarks = draft.value.remarks.map((each, n) => (n === place ? { ...each, ...to } : each));
  change({ remarks });
}

export function remove(place: number): Remark | undefined {
  const gone = draft.value.remarks[place];
  writing.value = undefined;
  change({ remarks: draft.value.remarks.filter((_, n) => n !== place) });
  return gone;
}

/** Ends the writing; a remark that says nothing goes. */
export function written(): void {
  const place = writing.value;
  writing.value = undefined;
  if (place !== undefined && draft.value.remarks[place]?.text.trim() === "") remove(place);
}

/** Leaves what the link shows without the remarks, which stay kept. */
export function leave(): void {
  draft.value = blank();
  put();
  session.core().show_notes(false);
}
