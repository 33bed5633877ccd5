// Versions of the open table, kept on this device beside it: the whole file
// under a name. Going back to one is a step like any other, and can be undone.

import { signal } from "@preact/signals";
import * as say from "#words";

import type { Layout } from "./core";
import { core, become, message, settled } from "./session";
import * as state from "./state";
import * as store from "./store";
import type { Version } from "./store";

/** Those of the open layout, the last kept first. */
export const all = signal<Version[]>([]);

/** Lists them anew; none where the device keeps nothing. */
export async function list(): Promise<void> {
  const id = state.layout.value?.id;
  all.value = id === undefined ? [] : await store.versions(id).catch(() => []);
}

/** Runs what is to be kept, and lists anew; says why it was not. */
async function kept(run: () => Promise<void>): Promise<boolean> {
  try {
    await run();
    return true;
  } catch (error) {
    state.fault.value = say.versionNotKept({ why: message(error) });
    return false;
  } finally {
    await list();
  }
}

/** Keeps the table as it stands now; without a name under the next number. */
export async function keep(named: string): Promise<string | undefined> {
  await settled();
  await list();
  const { id: layout } = core();
  const last = all.value[0]?.made ?? 0;
  const name = named.trim() || say.versionNumber({ number: String(all.value.length + 1) });
  const version = { layout, made: Math.max(Date.now(), last + 1), name, file: core().save_json() };
  return (await kept(() => store.keepVersions([version]))) ? name : undefined;
}

/** Keeps what is sent, to tell later what changed since; where there is room. */
export async function keepSent(number: number): Promise<void> {
  await list();
  if (all.value.length < store.MOST_VERSIONS) await keep(say.versionSent({ number: String(number) }));
}

/** The table as it was sent under this number, if that is kept. */
export function sent(number: number): Version | undefined {
  const was = ({ file }: Version): number => (JSON.parse(file) as Layout).revision.number;
  return [...all.value].reverse().find((version) => was(version) === number);
}

export const remove = (version: Version): Promise<boolean> =>
  kept(() => store.removeVersion(version));
export const putBack = (version: Version): Promise<boolean> =>
  kept(() => store.keepVersions([version]));

/**
 * Brings the table back to a version, as one step. Numbers and the count of
 * what was sent go on from now, so that none is given twice.
 */
export function goBack({ name, file }: Version): boolean {
  const now = state.layout.value;
  if (now === undefined) return false;
  const to = JSON.parse(file) as Layout;
  return become(say.doneVersionBack({ name }), {
    ...to,
    revision: now.revision,
    ...(now.remarks === undefined ? {} : { remarks: now.remarks }),
    next_id: Math.max(to.next_id, now.next_id),
    next_number: Math.max(to.next_number, now.next_number),
  });
}
