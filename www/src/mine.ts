// Things of one's own, kept on this device as layouts are: each a file that
// holds the thing alone.

import { signal } from "@preact/signals";
import * as say from "#words";

import type { Id } from "./core";
import { freshId } from "./fresh";
import { core, message } from "./session";
import * as state from "./state";
import * as store from "./store";

/** What is kept, by name. */
export const mine = signal<store.Kept[]>([]);

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
  } catch (error) {
    state.fault.value = say.mineNotRead({ why: message(error) });
  }
}

/** Keeps a thing of the open layout with what stands on it. */
export async function keep(id: Id): Promise<void> {
  const own = freshId();
  const file = core().kept(id, own);
  if (file === "") return;
  const { title } = JSON.parse(file) as { title: string };
  try {
    await store.keepWhole({ id: own, title, file, upto: 0, changed: Date.now(), thing: true });
    state.lastAct.value = say.mineKept({ thing: title });
    state.said.value = state.lastAct.value;
    await list();
  } catch (error) {
    state.fault.value = say.mineNotKept({ thing: title, why: message(error) });
  }
}

export async function remove(id: string): Promise<void> {
  try {
    await store.remove(id);
    await list();
  } catch (error) {
    state.fault.value = say.mineNotRead({ why: message(error) });
  }
}
