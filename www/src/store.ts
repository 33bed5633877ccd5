// Keeps layouts on this device: for each a snapshot, the steps that can be taken
// back or made again, and how many of them are done; one transaction per act,
// handed over whole within the act, so that killing the page loses at most the
// action in hand. "Relaxed" leaves it to the system when the disk is written: a
// killed browser keeps all, a phone whose power fails may lose the last acts.

import * as say from "#words";
import type { Done } from "./core";

const NAME = "overspread";
const SNAPSHOT = "snapshots";
const JOURNAL = "journal";
const PLACES = "places";
const VERSIONS = "versions";
const DAYS = "days";
const ANSWERS = "answers";

/** A layout as kept: the whole file as it was when `upto` steps were done. */
export interface Kept {
  id: string;
  title: string;
  /** The layout file. */
  file: string;
  /** How many steps were done in this file. */
  upto: number;
  /** When it was last changed, ms. */
  changed: number;
  /** Whether it is a thing of one's own, and no table. */
  thing?: true;
}
/** One step, under its number from 0. */
interface Entry {
  layout: string;
  number: number;
  record: string;
}
/** How many steps of a layout are done. */
interface Place {
  id: string;
  at: number;
}
/** How many versions of one layout are kept. */
export const MOST_VERSIONS = 40;

/** A layout as it once was, kept under a name. */
export interface Version {
  layout: string;
  /** When it was kept, ms; no two of a layout at once. */
  made: number;
  name: string;
  /** The layout file. */
  file: string;
}
/** All that is kept of a layout. */
export interface Shelf {
  kept: Kept;
  at: number;
  steps: Entry[];
}

let opened: Promise<IDBDatabase> | undefined;
/** The same once it is open, so that an act need not wait to be handed over. */
let connection: IDBDatabase | undefined;
let lost: () => void = () => undefined;

/** Tells whenever what was kept may be gone: erased, or closed by the browser. */
export const onLost = (tell: () => void): void => void (lost = tell);

function closed(): void {
  [opened, connection] = [undefined, undefined];
  lost();
}

/** How long a page waits for the device to open what is kept before it goes on without, ms. */
const PATIENCE_MS = 4_000;
/** Whether it was waited for in vain: until it answers nothing waits for it again. */
let silent = false;

function opening(): Promise<IDBDatabase> {
  return new Promise<IDBDatabase>((resolve, reject) => {
    // Missing, where a browser keeps nothing at all.
    const request = (globalThis.indexedDB as IDBFactory | undefined)?.open(NAME, 5);
    if (request === undefined) return reject(new Error(say.noStorage));
    request.onupgradeneeded = () => {
      const store = (name: string, keyPath: string | string[]): void => {
        if (!request.result.objectStoreNames.contains(name)) {
          request.result.createObjectStore(name, { keyPath });
        }
      };
      store(SNAPSHOT, "id");
      store(JOURNAL, ["layout", "number"]);
      store(PLACES, "id");
      store(VERSIONS, ["layout", "made"]);
      store(DAYS, "layout");
      store(ANSWERS, "key");
    };
    request.onsuccess = () => {
      [connection, silent] = [request.result, false];
      connection.onclose = closed;
      // Whoever erases or renews it would wait for this page.
      connection.onversionchange = () => {
        request.result.close();
        closed();
      };
      resolve(connection);
    };
    request.onerror = () => {
      const newer = request.error?.name === "VersionError";
      reject(newer ? new Error(say.newerKeeps) : (request.error ?? new Error(say.noStorage)));
    };
  });
}

function database(): Promise<IDBDatabase> {
  if (opened === undefined) {
    opened = opening();
    // What could not be opened now may be at the next act.
    opened.catch(() => ([opened, silent] = [undefined, false]));
  }
  if (silent) return Promise.reject(new Error(say.noStorage));
  const asked = opened;
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => {
      silent = opened === asked;
      reject(new Error(say.noStorage));
    }, PATIENCE_MS);
    asked.then(resolve, reject).finally(() => clearTimeout(late));
  });
}

/** Begins a transaction, within the task that asks for it if the store is open. */
async function begun(stores: string | string[], mode: IDBTransactionMode = "readonly"): Promise<IDBTransaction> {
  const open = connection ?? (await database());
  try {
    return open.transaction(stores, mode, { durability: "relaxed" });
  } catch (error) {
    closed();
    throw error;
  }
}

function asked<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error(say.noStorage));
  });
}

interface Stores {
  snapshots: IDBObjectStore;
  journal: IDBObjectStore;
  places: IDBObjectStore;
  versions: IDBObjectStore;
  days: IDBObjectStore;
}

async function within(act: (stores: Stores) => void): Promise<void> {
  const transaction = await begun([SNAPSHOT, JOURNAL, PLACES, VERSIONS, DAYS], "readwrite");
  try {
    act({
      snapshots: transaction.objectStore(SNAPSHOT),
      journal: transaction.objectStore(JOURNAL),
      places: transaction.objectStore(PLACES),
      versions: transaction.objectStore(VERSIONS),
      days: transaction.objectStore(DAYS),
    });
  } catch (error) {
    // Half of it would be kept.
    transaction.abort();
    throw error;
  }
  return completed(transaction);
}

/** Has a transaction end without this page, and waits until it has. */
function completed(transaction: IDBTransaction): Promise<void> {
  transaction.commit();
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error(say.noStorage));
  });
}

/** The steps of a layout from one number up to another, that one left out. */
const steps = (id: string, from = 0, to = Infinity): IDBKeyRange =>
  IDBKeyRange.bound([id, from], [id, to], false, true);

/** Keeps a layout whole, with the steps that lead to it and on from it: none when nothing has been done to it. */
export function keepWhole(kept: Kept, records: Iterable<readonly [number, string]> = []): Promise<void> {
  return within(({ snapshots, journal, places }) => {
    snapshots.put(kept);
    journal.delete(steps(kept.id));
    for (const [number, record] of records) {
      journal.put({ layout: kept.id, number, record } satisfies Entry);
    }
    places.put({ id: kept.id, at: kept.upto } satisfies Place);
  });
}

/** Keeps things of one's own and lets others go, all of it or nothing. */
export function exchange(put: readonly Kept[], away: readonly string[]): Promise<void> {
  return within(({ snapshots, places }) => {
    for (const kept of put) {
      snapshots.put(kept);
      places.put({ id: kept.id, at: kept.upto } satisfies Place);
    }
    for (const id of away) {
      snapshots.delete(id);
      places.delete(id);
    }
  });
}

/** Keeps what came of one act, with the whole layout where one is given. */
export function keepAct(id: string, done: Done, whole: Kept | undefined): Promise<void> {
  return within(({ snapshots, journal, places }) => {
    if (done.first > 0) journal.delete(steps(id, 0, done.first));
    journal.delete(steps(id, done.end));
    if (done.record !== null) {
      journal.put({ layout: id, number: done.at - 1, record: done.record } satisfies Entry);
    }
    places.put({ id, at: done.at } satisfies Place);
    if (whole !== undefined) snapshots.put(whole);
  });
}

/** All that is kept of a layout, its steps in their order. */
export async function load(id: string): Promise<Shelf | undefined> {
  const transaction = await begun([SNAPSHOT, JOURNAL, PLACES]);
  const kept = asked<Kept | undefined>(transaction.objectStore(SNAPSHOT).get(id));
  const entries = asked<Entry[]>(transaction.objectStore(JOURNAL).getAll(steps(id)));
  const place = asked<Place | undefined>(transaction.objectStore(PLACES).get(id));
  const [found, all, at] = [await kept, await entries, await place];
  if (found === undefined) return undefined;
  return { kept: found, at: at?.at ?? found.upto, steps: all };
}

/** Every layout kept here, last changed first. */
export async function everything(): Promise<Kept[]> {
  return (await whole()).filter(({ thing }) => thing !== true);
}

/** Every thing of one's own kept here, last changed first. */
export async function things(): Promise<Kept[]> {
  return (await whole()).filter(({ thing }) => thing === true);
}

async function whole(): Promise<Kept[]> {
  const transaction = await begun(SNAPSHOT);
  const all = await asked<Kept[]>(transaction.objectStore(SNAPSHOT).getAll());
  return all.sort((a, b) => b.changed - a.changed);
}

/** Removes a layout, its steps and its versions. */
export function remove(id: string): Promise<void> {
  return within(({ snapshots, journal, places, versions, days }) => {
    snapshots.delete(id);
    days.delete(id);
    journal.delete(steps(id));
    places.delete(id);
    versions.delete(steps(id));
  });
}

/** The versions of a layout, or of all of them, the last kept first. */
export async function versions(id?: string): Promise<Version[]> {
  const store = (await begun(VERSIONS)).objectStore(VERSIONS);
  const all = await asked<Version[]>(store.getAll(id === undefined ? undefined : steps(id)));
  return all.sort((a, b) => b.made - a.made);
}

/** Keeps versions; one kept at the same time is replaced. */
export const keepVersions = (all: Version[]): Promise<void> =>
  within(({ versions }) => all.forEach((version) => versions.put(version)));

/** Removes a version. */
export const removeVersion = ({ layout, made }: Version): Promise<void> =>
  within(({ versions }) => void versions.delete([layout, made]));

/** How far the shoot day of a layout is, as it was kept. */
export async function day(layout: string): Promise<unknown> {
  return asked((await begun(DAYS)).objectStore(DAYS).get(layout));
}

/** Keeps how far the shoot day of a layout is. */
export const keepDay = (day: { layout: string }): Promise<void> =>
  within(({ days }) => void days.put(day));

/** Something of an answer, under a key: one begun here, or one that came. */
export interface Noted {
  key: string;
  /** When it was last changed, ms. */
  changed: number;
  /** What it holds, as text. */
  text: string;
}

const answers = async (mode?: IDBTransactionMode): Promise<IDBObjectStore> =>
  (await begun(ANSWERS, mode)).objectStore(ANSWERS);
async function noting(act: (store: IDBObjectStore) => void): Promise<void> {
  const store = await answers("readwrite");
  act(store);
  return completed(store.transaction);
}
export const note = (noted: Noted): Promise<void> => noting((store) => void store.put(noted));
export const noted = async (key: string): Promise<Noted | undefined> => asked((await answers()).get(key));
export const unnote = (key: string): Promise<void> => noting((store) => void store.delete(key));
/** All whose key begins so. */
export const allNoted = async (begin: string): Promise<Noted[]> =>
  asked((await answers()).getAll(IDBKeyRange.bound(begin, `${begin}\uffff`)));

/** Asks the browser not to clear our storage when space runs short. */
export async function askToStay(): Promise<boolean> {
  return (await navigator.storage?.persist?.()) ?? false;
}

let release: (() => void) | undefined;
let written: string | undefined;
const lockOf = (id: string): string => `${NAME}-${id}`;
/** Missing in old browsers; there every tab may write. */
const locks = navigator.locks as LockManager | undefined;

/**
 * Becomes the one writer of a layout, giving up the one before. False when
 * another tab is writing it; then this tab may only read.
 */
export function becomeWriter(id: string): Promise<boolean> {
  if (written === id) return Promise.resolve(true);
  release?.();
  [release, written] = [undefined, undefined];
  if (locks === undefined) return Promise.resolve(true);
  return new Promise((resolve) => {
    locks
      .request(lockOf(id), { ifAvailable: true }, (lock) => {
        resolve(lock !== null);
        if (lock === null) return undefined;
        written = id;
        return new Promise<void>((done) => (release = done));
      })
      // Where locks are denied, as where there are none.
      .catch(() => resolve(true));
  });
}

/** Runs what changes a layout that is not open here, unless another tab is writing it; false then. */
export async function asWriter(id: string, run: () => Promise<void>): Promise<boolean> {
  let ran = false;
  const alone = async (lock: Lock | null): Promise<boolean> => {
    ran = lock !== null;
    if (ran) await run();
    return ran;
  };
  if (locks === undefined) return run().then(() => true);
  return locks.request(lockOf(id), { ifAvailable: true }, alone).catch(async (error: unknown) => {
    if (ran) throw error;
    // Where locks are denied, as where there are none.
    await run();
    return true;
  });
}
