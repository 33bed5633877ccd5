// What the page and its worker say to each other. A revision counts the layouts
// that were ever open; what answers an older one is dropped.

import type { Id, Pair, Report, Scores, State } from "./core";

export type Ask =
  | { ask: "core"; module: WebAssembly.Module }
  | { ask: "open"; revision: number; file: string }
  | { ask: "edit"; revision: number; record: string }
  | { ask: "guides"; file: string }
  | { ask: "compare"; before: string; after: string }
  | { ask: "arrange"; serial: number; wish?: unknown }
  | { ask: "search"; revision: number; serial: number; wanted: Search }
  | { ask: "no-search" }
  | ({ ask: "view" } & View)
  | ({ ask: "drag"; revision: number } & Moved);

/** What is looked at: with or without hands, through which crop (0 for the whole
 * frame), the marks of which finding or, after `show:`, reading, beside which crops as the core takes them. */
export interface View {
  noHands: boolean;
  crop: Id;
  key: string;
  crops: number;
  /** Whether the picture is seen through the lens. */
  lens: boolean;
}

/** How far a drag or a turn in hand has come. */
export interface Moved {
  serial: number;
  ids: readonly Id[];
  /** Whether it goes without its group. */
  alone: boolean;
  dx: number;
  dy: number;
  halfDegrees: number;
}

/** Marks on their way to the drawing, as the core packs them. */
export interface Marks {
  numbers: Float64Array;
  words: string;
}

/** What a drag in hand changes. */
export interface Live {
  scores: Scores | null;
  changes: { key: string; sentence: string; better: boolean }[];
}

/** One starting arrangement: its file, or nothing where there is no room for it. */
export interface Arranged {
  name: string;
  file: string | null;
  /** Whether another one follows. */
  more: boolean;
}

/** An arrangement of the newest table asked for. */
export type ArrangedAnswer = { tell: "arranged"; serial: number } & Arranged;

export type Answer =
  | { tell: "read"; revision: number; view: View; report: Report; marks: Marks }
  | { tell: "marks"; revision: number; marks: Marks }
  | { tell: "searched"; revision: number; serial: number; searched: Searched }
  | { tell: "live"; revision: number; serial: number; live: Live; marks: Marks };

/** Which mask guides there are to be made, as the core tells it. */
export interface Wanted {
  /** Pixels across and down. */
  pixels: [number, number];
  /** Whether the layout says so many. */
  told: boolean;
  /** The file of the sheet that comes with them. */
  sheet: string;
  files: { exposure: Id; name: string }[];
}

/** How far the guides are, 0 to 1; at the end all of them, or why there are none. */
export interface GuideAnswer {
  tell: "guides";
  done: number;
  zip?: Blob;
  fault?: string;
}

/** What changed from one layout to another, in words. */
export interface Change {
  number: number | null;
  /** What it is about. */
  topic: string;
  /** All it carries, the chief one first. */
  objects: Id[];
  sentence: string;
  /** Where the chief one was and is, mm. */
  moved: [Pair, Pair] | null;
  /** Whether a client is shown it. */
  client: boolean;
}

/** Two layouts beside each other. */
export interface Compared {
  /** Whether they are versions of one table. */
  versions: boolean;
  changes: Change[];
  findings: {
    before: { key: string; state: State; sentence: string }[];
    after: { key: string; state: State; sentence: string }[];
    both: { key: string; sentences: [string, string]; better: boolean | null }[];
    scores: [Scores | null, Scores | null];
  };
}

/** What came of a comparison: it, or why there is none. */
export type ComparedAnswer =
  | { tell: "compared"; compared: Compared }
  | { tell: "compared"; fault: string };

/** What is wanted of a search, as the core takes it. */
export interface Search {
  may: string[];
  most: string[];
  /** The finding to be cured, by its key; "" for none. */
  cure: string;
  seed: number;
  evaluations: number;
  crop: Id;
}
/** How far a search is, and what it found since it was last told. */
export interface Searched {
  spent: number;
  all: number;
  through: boolean;
  new: Proposal[];
}
/** A layout that reads better: what it moves, and what that changes. */
export interface Proposal {
  name: string;
  moves: { sentences: string[]; record: string }[];
  better: Differs[];
  worse: Differs[];
  /** Before and after. */
  scores: [Scores | null, Scores | null];
  record: string;
}
export interface Differs {
  key: string;
  sentence: string;
  rank: number;
}
