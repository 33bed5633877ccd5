// The lists as the core has them, what is changed in them, and the ticks kept
// on this device.

import { signal } from "@preact/signals";

import type { Id } from "./core";
import * as session from "./session";
import * as state from "./state";
import * as visits from "./visits";

export type Source = "own" | "hire" | "buy" | "borrow" | "client";
/** One row of the prop pull list. */
export interface Pull {
  ids: Id[];
  numbers: string;
  name: string;
  size: string;
  looks: string;
  count: number;
  spare: number;
  used: string;
  source: Source | null;
  shelf: string;
  /** What one's own shelf has of it, in words. */
  have: string;
  lacks: number;
}
/** One row of the food list. */
export interface Dish extends Omit<Pull, "size" | "looks" | "used" | "have" | "lacks"> {
  stand_in: string;
  from: string;
  by: string;
  hold: string;
  refresh: string;
  allergens: string;
}
/** A paper there is. */
export interface Paper {
  key: string;
  name: string;
  wide: boolean;
}

const words = (ids: Id[]): Uint16Array => Uint16Array.from(ids);

export const change = {
  count: (ids: Id[], count: number) =>
    session.act(() => session.core().set_count(words(ids), Math.max(0, count))),
  spare: (ids: Id[], spare: number) =>
    session.act(() => session.core().set_spare(words(ids), Math.max(0, spare), visits.now())),
  source: (ids: Id[], source: string) =>
    session.act(() => session.core().set_stock(words(ids), source, undefined)),
  shelf: (ids: Id[], shelf: string) =>
    session.act(() => session.core().set_stock(words(ids), undefined, shelf)),
};

/** Where a thing is on the day. */
export type Tick = "pulled" | "out" | "back";

const name = (): string => `ticks ${state.layout.value?.id ?? ""}`;
const of = (ids: Id[], tick: Tick): string => `${ids[0] ?? 0} ${tick}`;

/** What is ticked of the open table; read when the table is first asked for. */
const ticked = signal<{ table: string; all: readonly string[] }>({ table: "", all: [] });

function all(): readonly string[] {
  const table = name();
  if (ticked.value.table !== table) {
    let kept: unknown;
    try {
      kept = JSON.parse(localStorage.getItem(table) ?? "[]");
    } catch {
      // Kept by nobody we know, or nothing may be read here.
    }
    const known = Array.isArray(kept) ? kept.filter((each) => typeof each === "string") : [];
    ticked.value = { table, all: known };
  }
  return ticked.value.all;
}

export const isTicked = (ids: Id[], tick: Tick): boolean => all().includes(of(ids, tick));

export function tick(ids: Id[], which: Tick, on: boolean): void {
  const rest = all().filter((each) => each !== of(ids, which));
  ticked.value = { table: name(), all: on ? [...rest, of(ids, which)] : rest };
  try {
    localStorage.setItem(name(), JSON.stringify(ticked.value.all));
  } catch {
    // It holds for as long as the page is open.
  }
}
