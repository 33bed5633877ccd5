// Keeps layouts on this device: a snapshot and a journal of edits for each, one
// transaction per edit, so that killing the page loses at most the action in hand.

import * as say from "#words";

const NAME = "overspread";
const SNAPSHOT = "snapshots";
const JOURNAL = "journal";

/** A layout as kept: the whole file at `upto`, to be followed by later edits. */
export interface Kept {
  id: string;
  title: string;
  /** The layout file. */
  file: string;
  /** Number of the last edit the file already holds. */
  upto: number;
  /** When it was last changed, ms. */
  changed: number;
}
interface Entry {
  layout: string;
  number: number;
  record: string;
}

let opened: Promise<IDBDatabase> | undefined;

function database(): Promise<IDBDatabase> {
  opened ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore(SNAPSHOT, { keyPath: "id" });
      request.result.createObjectStore(JOURNAL, { keyPath: ["layout", "number"] });
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error(say.noStorage));
  });
  return opened;
}

function asked<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error(say.noStorage));
  });
}

async function within(
  act: (snapshots: IDBObjectStore, journal: IDBObjectStore) => void,
): Promise<void> {
  const transaction = (await database()).transaction([SNAPSHOT, JOURNAL], "readwrite", {
    durability: "relaxed",
  });
  act(transaction.objectStore(SNAPSHOT), transaction.objectStore(JOURNAL));
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error(say.noStorage));
  });
}

const journalOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id, 0], [id, Infinity]);

/** Keeps the whole layout and drops the edits it holds. */
export function keepWhole(kept: Kept): Promise<void> {
  return within((snapshots, journal) => {
    snapshots.put(kept);
    journal.delete(IDBKeyRange.bound([kept.id, 0], [kept.id, kept.upto]));
  });
}

/** Keeps one edit. */
export function keepEdit(layout: string, number: number, record: string): Promise<void> {
  return within((_, journal) => journal.put({ layout, number, record } satisfies Entry));
}

/** A layout and the records of the edits made since its snapshot, in order. */
export async function load(id: string): Promise<{ kept: Kept; records: Entry[] } | undefined> {
  const transaction = (await database()).transaction([SNAPSHOT, JOURNAL]);
  const kept = asked<Kept | undefined>(transaction.objectStore(SNAPSHOT).get(id));
  const all = asked<Entry[]>(transaction.objectStore(JOURNAL).getAll(journalOf(id)));
  const [found, records] = [await kept, await all];
  if (found === undefined) return undefined;
  return { kept: found, records: records.filter((entry) => entry.number > found.upto) };
}

/** Every layout kept here, last changed first. */
export async function everything(): Promise<Kept[]> {
  const transaction = (await database()).transaction(SNAPSHOT);
  const all = await asked<Kept[]>(transaction.objectStore(SNAPSHOT).getAll());
  return all.sort((a, b) => b.changed - a.changed);
}

/** Removes a layout and its edits. */
export function remove(id: string): Promise<void> {
  return within((snapshots, journal) => {
    snapshots.delete(id);
    journal.delete(journalOf(id));
  });
}

/** Asks the browser not to clear our storage when space runs short. */
export async function askToStay(): Promise<boolean> {
  return (await navigator.storage?.persist?.()) ?? false;
}

let release: (() => void) | undefined;

/**
 * Becomes the one writer of a layout, giving up the one before. False when
 * another tab is writing it; then this tab may only read.
 */
export function becomeWriter(id: string): Promise<boolean> {
  release?.();
  release = undefined;
  const locks = navigator.locks as LockManager | undefined;
  if (locks === undefined) return Promise.resolve(true);
  return new Promise((resolve, reject) => {
    locks
      .request(`${NAME}-${id}`, { ifAvailable: true }, (lock) => {
        resolve(lock !== null);
        if (lock === null) return undefined;
        return new Promise<void>((done) => (release = done));
      })
      .catch(reject);
  });
}
