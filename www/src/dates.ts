// The plan back from the day on sale, as the core tells it, and what is told
// otherwise.

import { act } from "./acts";
import type { Layout } from "./core";
import * as say from "#words";

/** What a layout's file says of its dates. */
export type Dates = NonNullable<Layout["dates"]>;
type StepKey = keyof NonNullable<Dates["steps"]>;
/** First and last month, from 1. */
export type Months = [number, number];

export interface Step {
  /** Empty for the day on sale. */
  key: StepKey | "";
  name: string;
  spoken: string;
  /** What its days are counted from. */
  counted: string;
  days: number;
  told: boolean;
  /** The usual figure and what it rests on. */
  ground: string;
  note: string;
  warnings: string[];
}
export interface Seasonal {
  food: string;
  name: string;
  months: Months | null;
  told: boolean;
  spoken: string;
}
export interface BackPlan {
  steps: Step[];
  foods: Seasonal[];
  warnings: string[];
  /** Their names, January first. */
  months: string[];
}
/** A day for a calendar. */
export interface Entry {
  uid: string;
  day: string;
  next: string;
  summary: string;
  description: string;
}

/** Today where the page is looked at. */
export function today(): string {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}

/** The moment a file is made: year, month, day, hour, minute and second of UTC. */
export function stamp(): number[] {
  const now = new Date();
  const day = [now.getUTCFullYear(), now.getUTCMonth() + 1, now.getUTCDate()];
  return [...day, now.getUTCHours(), now.getUTCMinutes(), now.getUTCSeconds()];
}

export const change = {
  /** How many days a step takes; as usual for none. */
  days: (dates: Dates, { key, name }: Step, days: number | undefined): void => {
    if (key === "") return;
    const { [key]: _, ...rest } = dates.steps ?? {};
    const within = days === undefined ? {} : { [key]: Math.min(say.MAX_STEP_DAYS, Math.max(0, days)) };
    act.dates({ ...dates, steps: { ...rest, ...within } }, say.doneStepDays({ step: name }));
  },
  /** When a food is in season; as known for none. */
  months: (dates: Dates, { food, name }: Seasonal, months: Months | undefined): void => {
    const rest = (dates.seasons ?? []).filter((season) => season.food !== food);
    const told = months === undefined ? [] : [{ food, months }];
    act.dates({ ...dates, seasons: [...rest, ...told] }, say.doneMonths({ thing: name }));
  },
};
