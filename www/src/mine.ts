// Things of one's own, kept on this device as layouts are: each a file that
// holds the thing alone. What a list or a layout asks of them the core is told
// first; every change of them can be taken back.

import { signal } from "@preact/signals";
import type { Planner } from "#core";
import * as say from "#words";

import type { Id, Pair } from "./core";
import { freshId } from "./fresh";
import { core, message } from "./session";
import * as state from "./state";
import * as store from "./store";

/** A thing of the shelf as the core tells it. */
export interface Owned {
  name: string;
  /** The catalogue's name for what it is like. */
  what: string;
  cloth: boolean;
  size: Pair;
  height: number;
  colour: string;
  finish: Finish;
  count: number;
  place: string;
}
export type Finish = "matt" | "satin" | "gloss" | "clear" | "liquid";
/** What is changed of one: what of it, and to what. */
export type Change =
  | ["name" | "place" | "colour", string]
  | ["finish", Finish]
  | ["count" | "height", number]
  | ["size", Pair];
/** One kept, and what it is; nothing of what cannot be read. */
export interface Shelved {
  kept: store.Kept;
  owned: Owned | null;
}

/** What is kept, by name. */
export const mine = signal<store.Kept[]>([]);
/** The same with what each is. */
export const shelf = signal<readonly Shelved[]>([]);
/** What the last change was, and each thing before it: as it was, or its id where it was not there. */
export const before = signal<{ said: string; all: readonly (store.Kept | string)[] } | undefined>(undefined);

/** The core that was told last, and what. */
let told: { core: Planner; of: store.Kept[] } | undefined;

/** The core in use, knowing the shelf. */
export function knowing(): Planner {
  const [planner, of] = [core(), mine.value];
  if (told?.core !== planner || told.of !== of) {
    told = { core: planner, of };
    const all = planner.set_shelf(of.map(({ id }) => id), of.map(({ file }) => file)) as (Owned | null)[];
    shelf.value = of.map((kept, n) => ({ kept, owned: all[n] ?? null }));
  }
  return planner;
}

/** With a title and a file, whatever was found; the core says what is amiss with either. */
const sound = (kept: store.Kept): store.Kept => {
  const { title, file } = kept as { title: unknown; file: unknown };
  const text = (value: unknown): string => (typeof value === "string" ? value : "");
  return { ...kept, title: text(title) || say.mineNameless, file: text(file) };
};

export async function list(): Promise<void> {
  try {
    const all = (await store.things()).map(sound);
    mine.value = all.sort((a, b) => a.title.localeCompare(b.title));
    knowing();
  } catch (error) {
    state.fault.value = say.mineNotRead({ why: message(error) });
  }
}

/** Keeps things and lets others go, all of it or nothing; tells what was done. */
export async function change(said: string, put: readonly store.Kept[], away: readonly string[] = []): Promise<boolean> {
  const was = [...put.map(({ id }) => id), ...away].map((id) => mine.value.find((each) => each.id === id) ?? id);
  try {
    await store.exchange(put, away);
  } catch (error) {
    state.fault.value = say.mineNotKept({ why: message(error) });
    return false;
  }
  [before.value, state.lastAct.value, state.said.value] = [{ said, all: was }, said, said];
  await list();
  return true;
}

/** Takes the last change back. */
export async function takeBack(): Promise<void> {
  const last = before.value;
  if (last === undefined) return;
  const put = last.all.filter((each) => typeof each !== "string");
  const away = last.all.filter((each) => typeof each === "string");
  if (await change(say.shelfTakenBack, put, away)) before.value = undefined;
}

/** As it is kept, from its file. */
function asKept(file: string): store.Kept {
  const { id, title } = JSON.parse(file) as { id: string; title: string };
  return { id, title, file, upto: 0, changed: Date.now(), thing: true };
}

function changed(file: string, [what, to]: Change): string {
  const [one, two] = Array.isArray(to) ? to : [Number(to) || 0, 0];
  return core().shelf_changed(file, what, String(to), one, two);
}

/** Keeps a thing of the open layout with what stands on it; of several alike, how many. */
export async function keep(id: Id, count?: number): Promise<void> {
  let file = core().kept(id, freshId());
  if (file === "") return;
  if (count !== undefined) file = changed(file, ["count", count]);
  const kept = asKept(file);
  await change(say.mineKept({ thing: kept.title }), [kept]);
}

/** Keeps one of a thing of the catalogue, so wide and so deep where that is told, mm. */
export async function keepKnown(prop: string, width = 0, depth = 0): Promise<boolean> {
  const file = core().shelf_new(prop, freshId(), width, depth);
  if (file === "") return false;
  const kept = asKept(file);
  return change(say.mineKept({ thing: kept.title }), [kept]);
}

/** Changes what is said of one. */
export async function alter({ id, file, title }: store.Kept, to: Change): Promise<void> {
  try {
    const kept = { ...asKept(changed(file, to)), id };
    await change(say.shelfAltered({ thing: title }), [kept]);
  } catch (error) {
    state.fault.value = say.mineNotRead({ why: message(error) });
  }
}

export const remove = (kept: store.Kept): Promise<boolean> =>
  change(say.shelfRemoved({ thing: kept.title }), [], [kept.id]);
