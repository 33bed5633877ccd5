// An answer that came by link: the table it answers is opened, the answer kept
// until it is put on it or thrown away.

import { signal } from "@preact/signals";
import * as say from "#words";

import type { Answered, ToldRemark } from "./core";
import * as resume from "./resume";
import * as session from "./session";
import * as state from "./state";
import * as store from "./store";
import * as versions from "./versions";

/** An answer, read over the open layout. */
export interface Read {
  layout: string;
  /** What it says, in words. */
  says: string;
  said: Answered;
  remarks: ToldRemark[];
  /** Whether it answers the open layout. */
  open: boolean;
  taken: boolean;
  /** How many remarks do not fit on it. */
  left: number;
}

const CAME = "answer ";
/** The answer that is looked at, as its link carries it. */
export const arrived = signal<string | undefined>(undefined);
/** Those kept to be read. */
export const kept = signal<store.Noted[]>([]);

export async function list(): Promise<void> {
  kept.value = await store.allNoted(CAME).catch(() => []);
}

/** What an answer says; nothing where it cannot be read. */
export function read(payload: string): Read | undefined {
  try {
    return session.core().read_answer(payload) as Read;
  } catch (error) {
    if (session.isFall(error)) session.goOn();
    state.fault.value = say.answerNotRead({ why: session.message(error) });
    return undefined;
  }
}

/** Opens the table an answer is for, or what was open last, and shows the answer. */
export async function arrive(payload: string, otherwise: () => Promise<void>): Promise<void> {
  const found = read(payload);
  const why = state.fault.value;
  const here = found !== undefined && (await opened(found.layout));
  if (!here && state.stage.value !== "work") await otherwise();
  history.replaceState(null, "", location.pathname);
  if (found === undefined) {
    state.fault.value = why;
    return;
  }
  try {
    await store.note({ key: CAME + payload, changed: Date.now(), text: payload });
  } catch (error) {
    state.fault.value = say.answerNotKept({ why: session.message(error) });
  }
  await look(payload);
}

/** Opens a layout if it is kept here. */
async function opened(id: string): Promise<boolean> {
  if (session.core().id === id && state.stage.value === "work") return true;
  return resume.open(id).catch(() => false);
}

/** Looks at an answer. */
export async function look(payload: string): Promise<void> {
  await list();
  await versions.list();
  state.stage.value = "work";
  state.place.value = "table";
  arrived.value = payload;
}

/** Puts it on the open table. */
export async function take(payload: string): Promise<void> {
  if (session.act(() => session.core().take_answer(payload))) await away(payload);
}

/** It is kept no longer. */
export async function away(payload: string): Promise<void> {
  arrived.value = undefined;
  await store.unnote(CAME + payload).catch(() => undefined);
  await list();
}
