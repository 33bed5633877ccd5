// The layouts kept here that are not open: renamed, removed, put back, and all
// of them as one file.

import type { Planner } from "#core";
import * as say from "#words";

import type { Done } from "./core";
import { snapshot } from "./keeping";
import { BACKUP, parsed } from "./resume";
import { another, core, goOn, isFall, listKept, message, openShelf, settled } from "./session";
import * as state from "./state";
import * as store from "./store";

/** Lends one more core. A fall of it takes the open layout's along: then both go on in fresh ones. */
function lender(): { use: <T>(run: (other: Planner) => T) => T; end: () => void } {
  let other = another();
  return {
    use(run) {
      try {
        return run(other);
      } catch (error) {
        if (isFall(error)) {
          goOn();
          other = another();
        }
        throw error;
      }
    },
    end: () => other.free(),
  };
}

/** Lends it once. */
function lent<T>(run: (other: Planner) => T): T {
  const { use, end } = lender();
  try {
    return use(run);
  } finally {
    end();
  }
}

/** Gives a kept layout that is not open another title, as a step of its own. */
export async function renameKept(id: string, title: string): Promise<void> {
  const rename = async (found: store.Shelf): Promise<void> => {
    const [done, file] = lent((other) => {
      openShelf(other, found);
      const to = { ...(JSON.parse(other.save_json()) as object), title };
      const done = other.become_json(say.doneRenamed, JSON.stringify(to), 0) as Done | undefined;
      return [done, other.save_json()] as const;
    });
    if (done !== undefined) await store.keepAct(id, done, snapshot(file, done.at));
  };
  try {
    const alone = await store.asWriter(id, async () => {
      const found = await store.load(id);
      if (found !== undefined) await rename(found);
    });
    if (!alone) state.fault.value = say.onlyShownRefused;
  } catch (error) {
    state.fault.value = say.refusedAct({ why: message(error) });
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
  let removed: Removed | undefined;
  const alone = await store.asWriter(id, async () => {
    const [file, kept] = [await wholeOf(id), state.kept.value.find((each) => each.id === id)];
    const versions = await store.versions(id);
    await store.remove(id);
    if (file !== undefined && kept !== undefined) removed = { kept: { ...kept, file }, versions };
  });
  if (!alone) state.fault.value = say.onlyShownRefused;
  await listKept();
  return removed;
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
    if (file !== undefined) parts.push(parsed(file));
  }
  const things: unknown[] = [];
  const { use, end } = lender();
  for (const { file } of await store.things()) {
    try {
      things.push(JSON.parse(use(again(file))));
    } catch {
      // What cannot be read here could not be read from the file either.
    }
  }
  end();
  const versions = (await store.versions()).map(({ made, name, file }) => {
    return { made, name, file: parsed(file) };
  });
  return JSON.stringify({ format: BACKUP, layouts: parts, things, versions }, null, 2);
}

/** A kept layout as it was left, or the file kept of it where that cannot be opened. */
export async function wholeOf(id: string): Promise<string | undefined> {
  const found = await store.load(id);
  if (found === undefined) return undefined;
  try {
    return lent((other) => {
      openShelf(other, found);
      return other.save_json();
    });
  } catch {
    return found.kept.file;
  }
}

/** Opens a file and writes it again. */
const again = (file: string) => (other: Planner) => {
  other.open_json(file);
  return other.save_json();
};

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

/** What came of a backup: how many layouts are back, and a line for each part that could not be read. */
interface Restored {
  count: number;
  left: string[];
}

/** Keeps all of a backup that reads well; what is kept here already stays as it is. */
export async function restore(parts: Backed[]): Promise<Restored> {
  const all = [...(await store.everything()), ...(await store.things())];
  const here = new Set(all.map((kept) => kept.id));
  const restored: Restored = { count: 0, left: [] };
  const { use, end } = lender();
  for (const part of parts) {
    let file: string;
    try {
      file = use(again(part.file));
    } catch (error) {
      restored.left.push(say.filePart({ title: titleOf(part), why: message(error).split("\n")[0] ?? "" }));
      continue;
    }
    const whole = snapshot(file, 0);
    const { is, name, made } = part;
    if (is === "version") {
      const old = await store.versions(whole.id);
      if (old.length >= store.MOST_VERSIONS || old.some((each) => each.made === made)) continue;
      await store.keepVersions([{ layout: whole.id, made, name, file }]);
      continue;
    }
    if (here.has(whole.id)) continue;
    await store.keepWhole(is === "thing" ? { ...whole, thing: true } : whole);
    if (is === "layout") restored.count += 1;
  }
  end();
  await listKept();
  return restored;
}

/** What a part of a backup calls itself. */
function titleOf({ file, name }: Backed): string {
  const { title } = Object(JSON.parse(file)) as { title?: unknown };
  return name || (typeof title === "string" ? title.slice(0, say.MAX_NAME) : "") || say.keptUntitled;
}
