// How far the day of the shoot is: ticks, food timers, and the log of what was
// shot. Kept after every change, so that a phone that was locked, or a page that
// was ended, goes on where it stood.

import { signal } from "@preact/signals";
import * as say from "#words";

import * as session from "../session";
import * as state from "../state";
import * as store from "../store";

interface Lasting {
  item: number;
  name: string;
  minutes: number;
}
export interface Tick {
  key: string;
  text: string;
  lasting?: Lasting | null;
}
export interface Step {
  key: string;
  kind: "ready" | "change" | "shoot" | "review" | "strike";
  exposure?: number | null;
  title: string;
  time: string;
  lines: string[];
  /** Food on the set that does not keep, and by when it is to be shot. */
  due: string[];
  ticks: Tick[];
}

/** Food whose time runs: since when, by the phone's clock, and whether its end was told. */
interface Timer extends Lasting {
  since: number;
  told: boolean;
}
/** What was shot of one exposure. */
export interface Shot {
  frames: number;
  file: string;
  note: string;
  kept: boolean;
}
export interface Progress {
  layout: string;
  /** The step that is shown, by its key. */
  at: string;
  /** Whether the steps are on the screen. */
  open: boolean;
  ticks: string[];
  timers: Timer[];
  log: Record<string, Shot>;
  /** When anything was last done, by the phone's clock. */
  touched: number;
}

export const progress = signal<Progress | undefined>(undefined);
export const steps = signal<Step[]>([]);
/** What the person has to know of this phone. */
export const told = signal("");

const NOTHING: Shot = { frames: 0, file: "", note: "", kept: false };
const MINUTE = 60_000;

const fresh = (layout: string, at: string): Progress => ({
  layout, at, open: false, ticks: [], timers: [], log: {}, touched: Date.now(),
});

/** Changes how far it is, and keeps that. */
export function change(by: Partial<Progress>): void {
  const before = progress.value;
  if (before === undefined) return;
  const now = { ...before, ...by, touched: Date.now() };
  progress.value = now;
  store
    .keepDay(now)
    .catch((error: unknown) => void (told.value = say.dayNotKept({ why: session.message(error) })));
}

/** Reads how far the day of the open layout is. */
export async function load(): Promise<void> {
  const id = session.core().id;
  steps.value = session.core().day_steps() as Step[];
  const first = steps.value[0]?.key ?? "";
  const found = await store.day(id).catch(() => undefined);
  if (session.core().id === id) progress.value = (found as Progress | undefined) ?? fresh(id, first);
}

/** Where the shown step is among them; what is gone counts as the first. */
export function place(): number {
  const at = progress.value?.at;
  return Math.max(0, steps.value.findIndex(({ key }) => key === at));
}

export function go(by: -1 | 1): void {
  const next = steps.value[place() + by];
  if (next !== undefined) change({ at: next.key });
}

/** Puts a tick or takes it away; with it the time of food begins or is forgotten. */
export function tick({ key, lasting }: Tick): void {
  const now = progress.value;
  if (now === undefined) return;
  const was = now.ticks.includes(key);
  const ticks = was ? now.ticks.filter((each) => each !== key) : [...now.ticks, key];
  if (!lasting) return change({ ticks });
  const others = now.timers.filter(({ item }) => item !== lasting.item);
  const timer = { ...lasting, since: Date.now(), told: false };
  change({ ticks, timers: was ? others : [...others, timer] });
}

/** What was shot of an exposure. */
export const shot = (exposure: number): Shot => progress.value?.log[exposure] ?? NOTHING;
export function log(exposure: number, by: Partial<Shot>): void {
  change({ log: { ...progress.value?.log, [exposure]: { ...shot(exposure), ...by } } });
}

/** All that was written down, for the papers. */
export const logged = (): (Shot & { exposure: number })[] =>
  Object.entries(progress.value?.log ?? {}).map(([id, shot]) => ({ ...shot, exposure: Number(id) }));

/** Milliseconds until food is past its time; less than none after it. */
export const left = (timer: Timer, now: number): number =>
  timer.since + timer.minutes * MINUTE - now;

/** Forgets everything and begins anew. */
export function restart(): void {
  const now = progress.value;
  if (now === undefined) return;
  change({ ...fresh(now.layout, steps.value[0]?.key ?? ""), open: now.open });
}

/** Opens the steps over the locked layout. */
export function open(): void {
  told.value = "";
  change({ open: true });
  state.stage.value = "day";
}

export function leave(): void {
  change({ open: false });
  [state.stage.value, state.place.value] = ["work", "papers"];
}

/** Shows the steps again if they were shown when the page ended. */
export async function resume(): Promise<void> {
  await load();
  if (progress.value?.open === true && steps.value.length > 0) state.stage.value = "day";
}
