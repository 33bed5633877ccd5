// What crosses from the core as objects, when something is opened, saved,
// selected or read. During a drag only numbers cross.

/** A whole number that names one object of a layout. */
export type Id = number;
export type Pair = [number, number];

export interface Tone {
  srgb: string;
  share: number;
  origin: "guess" | "photo" | "measured";
}
export interface Part {
  colours: Tone[];
}
export type Size =
  | { shape: "disc"; diameter: number; rim: number }
  | { shape: "rect"; width: number; depth: number; corner: number; rim: number }
  | { shape: "oval"; width: number; depth: number; rim: number }
  | { shape: "outline"; points: Pair[] };

/** How wide and deep a thing is before it is turned, mm. */
export function extent(size: Size): [number, number] {
  switch (size.shape) {
    case "disc":
      return [size.diameter, size.diameter];
    case "outline": {
      const reach = (axis: 0 | 1): number =>
        Math.max(...size.points.map((point) => Math.abs(point[axis]))) * 2;
      return [reach(0), reach(1)];
    }
    default:
      return [size.width, size.depth];
  }
}

export type Role = "hero" | "support" | "accent" | "filler";
export interface Item {
  id: Id;
  number: number;
  name: string;
  prop: string;
  at: Pair;
  turn: number;
  size: Size;
  height: number;
  parts?: { rim?: Part; well?: Part; food?: Part };
  finish: string;
  face: string;
  role: Role;
  on?: Id;
  group?: Id;
  locked?: boolean;
  hold_minutes?: number;
  stand_in?: string;
}
export interface Linen {
  id: Id;
  name: string;
  kind: "runner" | "cloth" | "mat" | "napkin";
  state: "flat" | "folded" | "bunched" | "thrown";
  at: Pair;
  size: Pair;
  turn: number;
  colour: string;
  origin?: Tone["origin"];
  over?: Id[];
  locked?: boolean;
}
export interface Hand {
  id: Id;
  person: Id;
  side: "left" | "right";
  pair?: Id;
  action: string;
  entry: Pair;
  target: Pair;
  height: number;
  palm: "down" | "up";
  holds?: Id;
  exposure: Id;
}
export interface Person {
  id: Id;
  skin: string;
  sleeve: { colour: string; length: "bare" | "rolled" | "long" };
  stature?: number | null;
  handed?: "left" | "right";
  nails?: string | null;
  ring?: "left" | "right" | null;
  released?: boolean;
}
export interface Exposure {
  id: Id;
  kind: "clean" | "hands" | "card" | "empty" | "steam" | "no-glare" | "insurance";
  minutes?: number;
  /** Every thing that is not as it is set. */
  states?: { item: Id; state: "as-set" | "absent" | "moved" | "changed"; turn?: number }[];
}
/** What a thing is to be in an exposure. */
export type How = "as-set" | "absent" | { look: "eaten" | "cut" | "poured" | { food: string } };
export interface Crop {
  id: Id;
  name: string;
  ratio?: Pair;
  print?: Pair;
  at: Pair;
  width: number;
  bleed?: number;
  safe?: number;
  gutter?: number;
  copy?: { area: [number, number, number, number]; wording: string };
  must?: boolean;
  must_show?: Id[];
}
/** What holds the camera; masses in grams. */
export interface Rig {
  ceiling: number;
  kind: "arm" | "two-stands" | "tripod" | "ceiling";
  at?: Pair;
  leg_bearing?: number;
  foot_radius: number;
  mast_height: number;
  stand_mass: number;
  arm_length: number;
  arm_mass: number;
  load_mass: number;
  counterweight?: { mass: number; behind: number };
  bag?: { mass: number; hung: "hub" | "lead-leg" | "rear-legs" };
  photographer?: Pair;
}
export interface Card {
  id: Id;
  kind: "white" | "black";
  at: Pair;
  turn: number;
  width: number;
  height: number;
}
/** What a client answered to a version. */
export interface Answered {
  verdict: Verdict;
  version: number;
  date: string;
  given?: string;
  choice?: string;
  by?: string;
}
export type Verdict = "yes" | "changes" | "no";
/** A remark on a thing or a bare place. */
export interface Remark {
  version: number;
  thing?: Id;
  tag?: string;
  at?: Pair;
  text: string;
  done?: boolean;
}
/** A remark in words. */
export interface ToldRemark {
  number: number;
  about: string;
  text: string;
  done: boolean;
  /** Whether what it is about is on the table. */
  here: boolean;
  version: number;
}
export interface Layout {
  id: string;
  based_on?: string;
  title: string;
  client?: string;
  note?: string;
  units: "cm" | "in";
  look: "low-key" | "normal" | "high-key";
  revision: { number: number; date: string; answer?: Answered };
  remarks?: Remark[];
  next_id: number;
  next_number: number;
  table: {
    shape: "rect" | "round";
    width: number;
    depth: number;
    height: number;
    surface: { name: string; prop: string; colour: string; origin?: Tone["origin"]; finish: string };
  };
  floor: { colour: string };
  frame: { ratio: Pair; at: Pair; width: number; turn: number };
  camera: { format: string; focal: number; focus_height?: number; pixels?: Pair };
  rig: Rig;
  light: {
    clock: number;
    distance: number;
    height_above_table: number;
    shape: "disc" | "window";
    width: number;
    height: number;
  };
  cards?: Card[];
  groups?: { id: Id; name: string }[];
  intended?: { finding: string; figure: number }[];
  linens: Linen[];
  items: Item[];
  people?: Person[];
  hands?: Hand[];
  exposures?: Exposure[];
  crops: Crop[];
  dates?: {
    on_sale?: string | undefined;
    medium?: "print" | "web";
    hemisphere?: "north" | "south";
    steps?: Partial<Record<"brief" | "approval" | "props" | "food" | "shoot" | "deliver", number>>;
    seasons?: { food: string; months: Pair }[];
  };
}

export type State = "holds" | "look-again" | "wont-work" | "intended" | "n/a";
interface Remedy {
  act: string;
  predicted: string;
  after: number;
  /** The edit it makes. */
  record: string;
}
export interface Finding {
  key: string;
  reading: string;
  state: State;
  rank: number;
  figure: number;
  about: Id[];
  sentence: string;
  remedy?: Remedy | null;
  working: string[];
  grade: string;
  /** A matter of taste is silent until asked. */
  taste: boolean;
}
export interface Scores {
  balance: number | null;
  triangle: number | null;
  separation: number | null;
}
export interface Report {
  findings: Finding[];
  scores?: Scores | null;
  /** The crop of which the scores are; without one the whole frame. */
  crop?: Id | null;
  /** Readings that cannot be made, and why. */
  waiting: { reading: string; reason: string }[];
  cautions: Caution[];
}
/** What to take care of: one line, and what part of the work it concerns. */
export interface Caution {
  id: string;
  concern: "camera" | "table" | "hands" | "food";
  line: string;
}

/** The camera in words. */
export interface Camera {
  height: string;
  stop: string;
  focus: string;
  pixels: Pair;
  lenses: { focal: number; own: boolean }[];
}

/** One line of the list of things: the picture, told in words. */
export interface Thing {
  id: Id;
  number: string;
  name: string;
  where: string;
  role: string;
  locked: boolean;
}

/** What came of an act on the layout: only steps from `first` and below `end` are still held. */
export interface Done {
  /** What was done, in words. */
  name: string;
  first: number;
  /** How many steps are done now. */
  at: number;
  end: number;
  /** The edit just made. */
  edit: string;
  /** The step before `at`, where it is new or another than before. */
  record: string | null;
}
