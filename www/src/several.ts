// Several things picked at once: by a loop drawn round them, one by one, or all.
// Which they are, and what of them may change, the core decides.

import { batch, computed } from "@preact/signals";

import * as say from "#words";

import type { Id } from "./core";
import * as session from "./session";
import type { Window } from "./stage";
import * as state from "./state";
import * as trail from "./trail";

const NAME = "loop";

const numbers = (ids: readonly Id[]): Uint16Array => Uint16Array.from(ids);
const now = (): Uint16Array => numbers(state.picked.value);

/** All that goes along with what is picked. */
export const along = computed(() => {
  const picked = state.picked.value;
  return new Set(picked.length === 0 ? [] : session.core().goes_along(numbers(picked)));
});

/** How many of the picked things are locked, and stay. */
export const staying = computed(() => {
  void state.layout.value;
  const picked = state.picked.value;
  return picked.length === 0 ? 0 : picked.length - session.core().free_of(numbers(picked)).length;
});

/** How many are picked. */
export function words(): string {
  const count = state.picked.value.length;
  return count === 0 ? say.pickedNone : say.picked({ count });
}

/** Picks these and nothing else. */
function pick(ids: Uint16Array): void {
  batch(() => {
    if (ids.length > 0) {
      session.choose(undefined);
      state.which.value = [];
      state.adding.value = false;
      state.place.value = "table";
    }
    state.picked.value = [...ids];
    state.said.value = words();
  });
}

/** What is picked already: what is chosen is taken for the first of them. */
function before(): Uint16Array {
  const chosen = state.chosen.value;
  const one = chosen === undefined ? [] : [...session.core().pick_toggle(numbers([]), chosen)];
  return state.picked.value.length === 0 ? numbers(one) : now();
}

/** Begins to pick, by loops and one by one. */
export function start(): void {
  batch(() => {
    const first = before();
    state.brush.value = undefined;
    if (state.sight.value === "mirror") state.sight.value = "plain";
    pick(first);
    state.picking.value = true;
  });
}

/** Picks nothing, and goes on as before. */
export function leave(): void {
  batch(() => {
    state.picking.value = false;
    state.picked.value = [];
  });
}

/** Picks one more, or one no longer. */
export const toggle = (id: Id): void => pick(session.core().pick_toggle(before(), id));
export const all = (): void => pick(session.core().pick_all());
export const none = (): void => pick(numbers([]));

/** Begins a loop where a finger comes down. */
export const begin = (view: Window, x: number, y: number): void => trail.begin(NAME, view, x, y);

/** Ends the loop: what lies in it is picked too; false when there was none. */
export function end(): boolean {
  if (!trail.drawn(NAME)) return false;
  pick(session.core().pick_within(before(), Float64Array.from(trail.end())));
  return true;
}

export const moveBy = (dx: number, dy: number): boolean =>
  session.act(() => session.core().nudge_picked(now(), dx, dy, 0, performance.now()));
export const turnBy = (degrees: number): boolean =>
  session.act(() => session.core().nudge_picked(now(), 0, 0, degrees * 2, performance.now()));

/** Does something to all of them; copies are picked in their place. */
export function deed(what: "lock" | "unlock" | "group" | "apart" | "repeat" | "remove"): void {
  const first = state.layout.value?.next_id ?? 0;
  if (!session.act(() => session.core().do_picked(now(), what)) || what !== "repeat") return;
  const { items = [], linens = [] } = state.layout.value ?? {};
  const copies = [...items, ...linens].map(({ id }) => id).filter((id) => id >= first);
  pick(session.core().picked(numbers(copies)));
}
