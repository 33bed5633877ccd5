// Opens what was kept here. Where the core falls over it, a fresh one tries once
// more, then without the last steps, ever fewer; what cannot be opened at all is
// set aside for another layout. What is left out stays kept, is named, and can be
// saved as a file, so that no layout and no step stops every start.

import * as say from "#words";

import * as keeping from "./keeping";
import * as session from "./session";
import * as state from "./state";
import * as store from "./store";

/** What a file with all layouts says it is. */
export const BACKUP = "overspread-layouts";

/** What was opened last, how often the core fell over it, and the how manieth opening it was. */
let trying: { found: store.Shelf; falls: number; opening: number } | undefined;
/** Layouts set aside, which only the person opens again. */
const aside = new Set<string>();

/** Opens a kept layout, or another in its stead; false when there is none. */
export async function open(id: string): Promise<boolean> {
  const found = await store.load(id);
  if (found === undefined) return false;
  trying = { found, falls: 0, opening: 0 };
  await attempt(trying).catch(instead);
  return true;
}

/** Opens what was last worked on here, another kept layout, or the first visit. */
export async function last(): Promise<void> {
  try {
    const id = await session.lastOpen();
    if (id !== undefined && !aside.has(id) && (await open(id))) return;
  } catch (error) {
    state.fault.value = say.storeNotRead({ why: session.message(error) });
  }
  await other();
}

/** The core fell over what it was to draw. */
export async function fallen(error: unknown): Promise<void> {
  const { linked } = session;
  session.renew();
  if (linked) {
    await last();
    state.fault.value = say.linkNotRead({ why: session.message(error) });
    return;
  }
  // By itself, as the fall may come of how it was looked at.
  [state.place.value, state.lens.value] = ["table", false];
  // Once it was drawn, or another was opened, what was found then is no longer what is kept.
  if (session.drawn || trying?.opening !== session.openings) return last();
  trying.falls += 1;
  await attempt(trying).catch(instead);
}

/** Opens as much as the core bears. */
async function attempt(of: NonNullable<typeof trying>): Promise<void> {
  const { kept, at, steps } = of.found;
  const away = at - kept.upto;
  for (;;) {
    // Once more as it was left, then step by step back to the file, then that alone.
    const back = Math.max(0, of.falls - 1);
    const bare = back > Math.abs(away);
    if (back > Math.abs(away) + 1) throw new WebAssembly.RuntimeError();
    const to = bare ? kept.upto : at - Math.sign(away) * back;
    const left = steps.filter(({ number }) => !bare && (back === 0 || (away > 0 ? number < to : number >= to)));
    try {
      const lost = session.openShelf(session.core(), { kept, at: to, steps: left });
      await session.opened(to, kept.upto, left.map(({ number, record }) => [number, record]));
      of.opening = session.openings;
      state.saved.value = keeping.savedWord();
      state.stage.value = "work";
      if (lost !== "") state.fault.value = lost;
      if (back > 0) offer(of.found, say.stepAside({ step: nameOf(of.found, to), title: titled(kept) }));
      // What was left out goes with the next act, which keeps all there is.
      if (back > 0 || lost !== "") keeping.cut();
      return;
    } catch (error) {
      if (!session.isFall(error)) throw error;
      session.renew();
      of.falls += 1;
    }
  }
}

const titled = ({ title }: store.Kept): string => title || say.keptUntitled;

/** What the first step is called that is left out where so many are done. */
function nameOf({ kept, at, steps }: store.Shelf, to: number): string {
  const number = at < kept.upto ? to - 1 : to;
  const record = steps.find((step) => step.number === number)?.record ?? "{}";
  return (Object(parsed(record)) as { name?: string }).name ?? String(number + 1);
}

/** A file's value, or the text itself where it is none. */
export function parsed(file: string): unknown {
  try {
    return JSON.parse(file) as unknown;
  } catch {
    return file;
  }
}

/** Says what was set aside, and offers it as a file that opens here as far as it can. */
function offer({ kept, at, steps }: store.Shelf, why: string): void {
  const { file, upto } = kept;
  const text = JSON.stringify({ format: BACKUP, layouts: [parsed(file)], upto, at, steps });
  state.aside.value = { why, title: titled(kept), text };
}

/** Sets aside what was being opened, and opens another. */
async function instead(error: unknown): Promise<void> {
  const found = trying?.found;
  trying = undefined;
  if (found === undefined) throw error;
  aside.add(found.kept.id);
  await other();
  const title = titled(found.kept);
  offer(found, session.isFall(error) ? say.layoutAside({ title }) : say.keptNotRead({ title, why: session.message(error) }));
}

/** Opens the layout last changed, or the first visit where there is none. */
async function other(): Promise<void> {
  const all = await store.everything().catch(() => []);
  const next = all.find(({ id }) => !aside.has(id));
  if (next === undefined || !(await open(next.id))) await session.firstVisit();
}
