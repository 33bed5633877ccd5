// The layouts kept here that are not open: renamed, removed, put back, and all
// of them as one file.

import type { Planner } from "#core";
import * as say from "#words";

import type { Done } from "./core";
import { another, core, listKept, message, openShelf, settled, snapshot } from "./session";
import * as state from "./state";
import * as store from "./store";

/** Gives a kept layout that is not open another title, as a step of its own. */
export async function renameKept(id: string, title: string): Promise<void> {
  const found = await store.load(id);
  if (found === undefined) return;
  const other: Planner = another();
  try {
    openShelf(other, found);
    const to = { ...(JSON.parse(other.save_json()) as object), title };
    const done = other.become_json(say.doneRenamed, JSON.stringify(to), 0) as Done | undefined;
    if (done !== undefined) await store.keepAct(id, done, snapshot(other.save_json(), done.at));
  } catch (error) {
    state.fault.value = say.refusedAct({ why: message(error) });
  } finally {
    other.free();
  }
  await listKept();
}

/** Removes a kept layout that is not open; returns it whole, to be put back. */
export async function removeKept(id: string): Promise<store.Kept | undefined> {
  const [file, kept] = [await wholeOf(id), state.kept.value.find((each) => each.id === id)];
  await store.remove(id);
  await listKept();
  return file === undefined || kept === undefined ? undefined : { ...kept, file };
}

/** Keeps a removed layout again. */
export async function putBack(kept: store.Kept): Promise<void> {
  await store.keepWhole(kept);
  await listKept();
}

/** All layouts and things of one's own kept here as one file. */
export async function backup(): Promise<string> {
  await settled();
  const current = core().id;
  const parts: unknown[] = [];
  for (const kept of await store.everything()) {
    const file = kept.id === current ? core().save_json() : await wholeOf(kept.id);
    if (file !== undefined) parts.push(JSON.parse(file));
  }
  const things: unknown[] = [];
  const other: Planner = another();
  for (const { file } of await store.things()) {
    try {
      other.open_json(file);
      things.push(JSON.parse(other.save_json()));
    } catch {
      // What cannot be read here could not be read from the file either.
    }
  }
  other.free();
  return JSON.stringify({ format: BACKUP, layouts: parts, things }, null, 2);
}

const BACKUP = "overspread-layouts";

/** A kept layout as it was left. */
async function wholeOf(id: string): Promise<string | undefined> {
  const found = await store.load(id);
  if (found === undefined) return undefined;
  const other: Planner = another();
  try {
    openShelf(other, found);
    return other.save_json();
  } finally {
    other.free();
  }
}

/** A layout, or a thing of one's own, in a backup file. */
interface Backed {
  file: string;
  thing: boolean;
}

/** What a backup file holds, or undefined when the text is no backup. */
export function backupParts(text: string): Backed[] | undefined {
  try {
    const value = JSON.parse(text) as { format?: unknown; layouts?: unknown; things?: unknown };
    if (value.format !== BACKUP || !Array.isArray(value.layouts)) return undefined;
    const parts = (all: unknown, thing: boolean): Backed[] =>
      Array.isArray(all) ? all.map((each) => ({ file: JSON.stringify(each), thing })) : [];
    return [...parts(value.layouts, false), ...parts(value.things, true)];
  } catch {
    return undefined;
  }
}

/** Keeps all of a backup that reads well; what is kept here already stays as it is. Counts the layouts. */
export async function restore(parts: Backed[]): Promise<number> {
  const all = [...(await store.everything()), ...(await store.things())];
  const here = new Set(all.map((kept) => kept.id));
  let count = 0;
  const other: Planner = another();
  try {
    for (const { file, thing } of parts) {
      other.open_json(file);
      if (here.has(other.id)) continue;
      const whole = snapshot(other.save_json(), 0);
      await store.keepWhole(thing ? { ...whole, thing } : whole);
      if (!thing) count += 1;
    }
  } finally {
    other.free();
    await listKept();
  }
  return count;
}
