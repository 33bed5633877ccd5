// What the search proposes: what is asked of it, how far it is, what of its
// proposals fits the table now, and which of them is shown on the picture.

import { batch, effect, signal } from "@preact/signals";

import type { Proposal, Searched } from "./asked";
import * as readings from "./readings";
import * as session from "./session";
import * as state from "./state";

/** What may be moved, and what may matter most, as the core names them. */
export const MAY = ["dishes", "linens", "hands", "crops", "light"] as const;
export const MOST = ["edges", "crops", "hands", "weight", "light"] as const;

/** Layouts looked at for three proposals, for three better ones, and for a way out of one finding. */
const FIRST = 84;
const FURTHER = 600;
const CURE = 110;

export const may = signal<readonly string[]>(MAY);
export const most = signal<readonly string[]>([]);
/** The finding a way out is looked for; "" when it is the whole table. */
export const cure = signal("");
/** How far a search is. */
export const underWay = signal<{ spent: number; all: number } | undefined>(undefined);
/** What was found; nothing before anything was looked for. */
export const found = signal<Proposal[] | undefined>(undefined);
/** The proposal that is shown, and the one move of it that is. */
export const shown = signal<{ proposal: number; move?: number } | undefined>(undefined);

/** How a move stands to the table now. */
type Fit = "open" | "done" | "stale";
const FITS: readonly Fit[] = ["stale", "open", "done"];

let serial = 0;

/** Whoever shows it is shown anew when the table changes. */
export function fit(record: string): Fit {
  void state.layout.value;
  return FITS[session.core().record_fits(record)] ?? "stale";
}

/** The moves of a proposal that are not made yet. */
export const left = (proposal: Proposal): string[] =>
  proposal.moves.map(({ record }) => record).filter((record) => fit(record) === "open");

/** Starts showing ghosts as they are asked for. */
export function begin(): void {
  effect(() => {
    // Both lay the ghosts anew.
    void state.through.value;
    void state.layout.value;
    const at = shown.value;
    const proposal = at === undefined ? undefined : found.value?.[at.proposal];
    if (at === undefined || proposal === undefined) return session.showGhosts([]);
    const one = at.move === undefined ? undefined : proposal.moves[at.move]?.record;
    const records = one === undefined ? left(proposal) : [one].filter((record) => fit(record) === "open");
    session.showGhosts(records);
  });
  effect(() => {
    // What no longer fits the table at all is forgotten.
    void state.layout.value;
    const all = found.peek();
    const fits = ({ moves }: Proposal): boolean => moves.some(({ record }) => fit(record) !== "stale");
    if (all !== undefined && all.length > 0 && !all.some(fits)) forget();
    if (underWay.peek() !== undefined) stop();
  });
}

/** Looks for proposals, or for a way out of one finding. */
export function look(key: string, further = false): void {
  serial += 1;
  batch(() => {
    cure.value = key;
    found.value = undefined;
    shown.value = undefined;
    const evaluations = key === "" ? (further ? FURTHER : FIRST) : CURE;
    underWay.value = { spent: 0, all: evaluations };
    const [allowed, dear] = key === "" ? [may.value, most.value] : [MAY, []];
    const crop = state.crop.value ?? 0;
    readings.search(serial, { may: [...allowed], most: [...dear], cure: key, seed: serial, evaluations, crop });
  });
}

/** Leaves it at what was found so far. */
export function stop(): void {
  readings.stopSearch();
  underWay.value = undefined;
}

export function forget(): void {
  batch(() => {
    found.value = undefined;
    shown.value = undefined;
  });
}

/** Takes what the worker found. */
export function searched(of: number, told: Searched): void {
  if (of !== serial || underWay.value === undefined) return;
  batch(() => {
    underWay.value = told.through ? undefined : { spent: told.spent, all: told.all };
    if (told.new.length > 0 || told.through) {
      found.value = [...(found.value ?? []), ...told.new];
      if (found.value.length > 0 && shown.value === undefined) shown.value = { proposal: 0 };
    }
  });
}

/** Makes a whole proposal, or what is left of it. */
export const acceptAll = (proposal: Proposal): boolean =>
  session.makeRecords(proposal.name, left(proposal));
export const acceptOne = (proposal: Proposal, move: number): boolean => {
  const one = proposal.moves[move];
  return one !== undefined && session.makeRecords(one.sentences[0] ?? proposal.name, [one.record]);
};

let brought: Element | null = null;

/** What was found comes to the top of what is scrolled beside the picture, once. */
export function bring(list: Element | null): void {
  const scrolled = list?.closest(".say");
  if (list !== null && scrolled && list !== brought) {
    // The browser's own way would scroll the picture out of sight as well.
    scrolled.scrollTop += list.getBoundingClientRect().top - scrolled.getBoundingClientRect().top;
  }
  brought = list;
}
