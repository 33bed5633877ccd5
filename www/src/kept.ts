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

/** A layout that was removed, with its versions. */
export interface Removed {
  kept: store.Kept;
  versions: store.Version[];
}

/** Removes a kept layout that is not open; returns it whole, to be put back. */
export async function removeKept(id: string): Promise<Removed | undefined> {
  const [file, kept] = [await wholeOf(id), state.kept.value.find((each) => each.id === id)];
  const versions = await store.versions(id);
  await store.remove(id);
  await listKept();
  return file === undefined || kept === undefined ? undefined : { kept: { ...kept, file }, versions };
}

/** Keeps a removed layout again. */
export async function putBack({ kept, versions }: Removed): Promise<void> {
  await store.keepWhole(kept);
  await store.keepVersions(versions);
  await listKept();
}

/** All layouts with their versions and things of one's own kept here as one file. */
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
  const versions = (await store.versions()).map(({ made, name, file }) => {
    return { made, name, file: JSON.parse(file) as unknown };
  });
  return JSON.stringify({ format: BACKUP, layouts: parts, things, versions }, null, 2);
}

const BACKUP = "overspread-layouts";

/** A kept layout as it was left. */
export async function wholeOf(id: string): Promise<string | undefined> {
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

/** A layout, a thing of one's own, or a version of a layout, in a backup file. */
interface Backed {
  file: string;
  is: "layout" | "thing" | "version";
  /** Of a version, its name and when it was kept. */
  name: string;
  made: number;
}

/** What a backup file holds, or undefined when the text is no backup. */
export function backupParts(text: string): Backed[] | undefined {
  try {
    const value = JSON.parse(text) as Record<string, unknown>;
    if (value["format"] !== BACKUP || !Array.isArray(value["layouts"])) return undefined;
    const parts = (all: unknown, is: "layout" | "thing"): Backed[] =>
      Array.isArray(all)
        ? all.map((each) => ({ file: JSON.stringify(each), is, name: "", made: 0 }))
        : [];
    return [
      ...parts(value["layouts"], "layout"),
      ...parts(value["things"], "thing"),
      ...versionParts(value["versions"]),
    ];
  } catch {
    return undefined;
  }
}

/** The versions of a backup; what is no version is passed over. */
function versionParts(all: unknown): Backed[] {
  if (!Array.isArray(all)) return [];
  return all.flatMap((each: unknown): Backed[] => {
    const { name, made, file } = Object(each) as Record<string, unknown>;
    if (typeof name !== "string" || typeof made !== "number" || !(made > 0)) return [];
    return [{ file: JSON.stringify(file ?? null), is: "version", name: name.slice(0, say.MAX_NAME), made }];
  });
}

/** Keeps all of a backup that reads well; what is kept here already stays as it is. Counts the layouts. */
export async function restore(parts: Backed[]): Promise<number> {
  const all = [...(await store.everything()), ...(await store.things())];
  const here = new Set(all.map((kept) => kept.id));
  let count = 0;
  const other: Planner = another();
  try {
    for (const { file, is, name, made } of parts) {
      other.open_json(file);
      if (is === "version") {
        const old = await store.versions(other.id);
        if (old.length >= store.MOST_VERSIONS || old.some((each) => each.made === made)) continue;
        await store.keepVersions([{ layout: other.id, made, name, file: other.save_json() }]);
        continue;
      }
      if (here.has(other.id)) continue;
      const whole = snapshot(other.save_json(), 0);
      await store.keepWhole(is === "thing" ? { ...whole, thing: true } : whole);
      if (is === "layout") count += 1;
    }
  } finally {
    other.free();
    await listKept();
  }
  return count;
}
