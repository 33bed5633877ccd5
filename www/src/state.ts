// What the panels show. The drawing is not among it: the core patches that.

import { computed, signal } from "@preact/signals";

import type { Live } from "./asked";
import type { Id, Layout, Report, Thing } from "./core";
import type { Kept } from "./store";

export type Place = "table" | "hands" | "camera" | "crops" | "papers";
/** Where the person stands: first sight, cured, choosing a new table, an own start, an empty board, at work, reading a link, or shooting. */
export type Stage = "first" | "cured" | "new" | "yours" | "empty" | "work" | "client" | "day";

export const stage = signal<Stage>("first");
export const place = signal<Place>("table");
/** The place that was asked for and is being made ready. */
export const going = signal<Place | undefined>(undefined);
export const layout = signal<Layout | undefined>(undefined);
export const report = signal<Report | undefined>(undefined);
/** What the drag in hand changes of the report. */
export const live = signal<Live | undefined>(undefined);
/** Whether what is open has still to be read. */
export const reading = signal(false);
export const things = signal<Thing[]>([]);
export const chosen = signal<Id | undefined>(undefined);
/** Whether the chosen thing is taken out of its group, and goes alone. */
export const inside = signal(false);
/** The crop in view, of which the scores are; without one the whole frame. */
export const crop = signal<Id | undefined>(undefined);
/** Whether a tap marks what the crop in view must show whole. */
export const marking = signal(false);
/** Whether things are being added. */
export const adding = signal(false);
/** Whether the open table is to be arranged another way. */
export const arranging = signal(false);
/** Whether it can be. */
export const arrangeable = signal(false);
/** Things picked together, for what is done to several at once; then none is chosen. */
export const picked = signal<readonly Id[]>([]);
/** Whether a finger picks: a loop what lies in it, a tap one thing. */
export const picking = signal(false);
/** What is brushed over the picture, and how much of it. */
export const brush = signal<{ prop: string; amount: number } | undefined>(undefined);
export const openFinding = signal<string | undefined>(undefined);
export const allNotes = signal(false);
export const saved = signal("");
export const lastAct = signal("");
export const undoable = signal(false);
export const redoable = signal(false);
export const readOnly = signal(false);
/** Whether a newer planner wrote what is open. */
export const fromNewer = signal(false);
export const fault = signal("");
/** What was set aside when something kept was opened: why, and a file of it. */
export const aside = signal<{ why: string; title: string; text: string } | undefined>(undefined);
/** Said to assistive technology when an action ends. */
export const said = signal("");
export const kept = signal<Kept[]>([]);
/** Which exposure is shown: all together (-2), no hands (-1), or one by its id. */
export const exposure = signal(-2);
/** The exposure that is worked on alone, on the table as it stands in it; 0 for none. */
export const workedIn = computed(() =>
  place.value === "hands" && stage.value === "work" ? Math.max(0, exposure.value) : 0,
);
/** How the picture is looked at. */
export type Sight = "plain" | "grey" | "squint" | "mirror";
export const sight = signal<Sight>("plain");
/** How it is seen: where there is no choosing, as it is. */
export const seen = computed(() =>
  place.value === "table" && stage.value === "work" ? sight.value : "plain",
);
/** Whether it is to be seen through the lens rather than from above, and is. */
export const lens = signal(false);
export const through = computed(() => lens.value && stage.value === "work");
/** What is shown all at once: a reading where light and camera are set, what each exposure adds at the hands; nothing for "". */
export type Shown = "" | "glare" | "light" | "exposures";
export const shown = signal<Shown>("");
export const newer = signal<(() => void) | undefined>(undefined);
/** Whether a finger is on the picture. */
export const touched = signal(false);
/** Whether the picture is enlarged or moved from where it is at rest. */
export const enlarged = signal(false);
/** Things under a finger when there is more than one. */
export const which = signal<Id[]>([]);
/** The first cure: the finding it was for, what its thing lost before and loses now. */
export const firstFigures = signal<
  { key: string; thing: string; before: string; now: string } | undefined
>(undefined);

/** Before the table is the visitor's own, it is shown and read without hands. */
export const early = computed(() => ["first", "cured", "yours"].includes(stage.value));
/**
 * The one finding of the first visit, a dish that sinks into what it lies on;
 * after its cure, which may leave a rest, the next one.
 */
export const firstFinding = computed(() =>
  report.value?.findings.find(
    ({ key, reading, remedy }) =>
      reading === "separation" && remedy && key !== firstFigures.value?.key,
  ),
);

export const chosenItem = computed(() =>
  layout.value?.items.find((item) => item.id === chosen.value),
);
export const chosenLinen = computed(() =>
  layout.value?.linens.find((linen) => linen.id === chosen.value),
);
export const chosenHand = computed(() =>
  layout.value?.hands?.find((hand) => hand.id === chosen.value),
);

/** Every crop is drawn. */
const ALL_CROPS = -2;
/**
 * Which crops are drawn, as the core takes it: the one an open finding is
 * about, or the one in view; all where crops are the matter, none elsewhere (-1).
 */
export const crops = computed(() => {
  if (early.value) return -1;
  const open = report.value?.findings.find(({ key }) => key === openFinding.value);
  const about = layout.value?.crops.find(({ id }) => open?.about.includes(id))?.id;
  return about ?? crop.value ?? (place.value === "crops" ? ALL_CROPS : -1);
});

/** Arm, stand and photographer are drawn where camera and light are the matter. */
export const rigged = computed(() => place.value === "camera" && stage.value === "work");

/** Places at the table are drawn where hands are the matter. */
export const seated = computed(
  () => place.value === "hands" && stage.value === "work" && !through.value,
);

/** Whether what a client remarked is written on the picture. */
export const noted = signal(false);

/** Which part of camera and light is being set. */
export type Part = "camera" | "rig" | "light";
export const part = signal<Part>("camera");
/** Whether the ring is shown on which a tap says where the window is. */
export const lit = computed(() => rigged.value && part.value === "light" && !through.value);
/** What the next tap on the picture puts down. */
export type Putting = "stand" | "photographer";
export const putting = signal<Putting | undefined>(undefined);
