// The plan over a test photo: which things are told where in it, what that says,
// and whether a second frame shows that the camera was bumped. Photos stay in
// this page and are let go of with it.

import { signal } from "@preact/signals";
import { Planner } from "#core";
import * as say from "#words";

import type { Id } from "./core";
import type { Spot } from "./crosshair";
import { drawPhoto } from "./photo";
import * as session from "./session";

export interface Told {
  id: Id;
  name: string;
}
interface Over {
  path: string;
  frame?: { pixels: number; on_table: number; sentence: string } | null;
}
interface Drift {
  id: Id;
  far: number;
  at: Spot;
  sentence: string;
}
interface Bump {
  pixels: number;
  moved: boolean;
  sentence: string;
  light: string;
}
/** A thing told at a place of the photo, px. */
export interface Mark {
  id: Id;
  spot: Spot;
}
/** Which picture is shown, once there are two. */
export type Which = "first" | "second" | "apart";

/** Marks a plan is laid by: at most so many, and it can be from so many. */
export const MOST = 4;
export const LEAST = 2;
/** Sides of the square about a mark, and of that in which it is found again, px. */
const SIDE = 41;
const WIDE = 161;

export const marks = signal<readonly Mark[]>([]);
export const over = signal<Over | undefined>(undefined);
export const drifts = signal<readonly Drift[]>([]);
export const bump = signal<Bump | undefined>(undefined);
export const fault = signal("");
export const which = signal<Which>("first");

const flat = (all: readonly Mark[]): [Uint16Array, Float64Array] => [
  Uint16Array.from(all, ({ id }) => id),
  Float64Array.from(all.flatMap(({ spot }) => spot)),
];

/** Forgets everything told. */
export function forget(): void {
  [marks.value, over.value, drifts.value, bump.value] = [[], undefined, [], undefined];
  [fault.value, which.value] = ["", "first"];
}

function tried(run: () => void): void {
  fault.value = "";
  try {
    run();
  } catch (error) {
    fault.value = session.message(error);
  }
}

/** Tells where a thing is, or anew; with enough of them the plan is laid over. */
export function tell(mark: Mark, photo: HTMLCanvasElement): void {
  const others = marks.value.filter(({ id }) => id !== mark.id);
  lay([...others, mark].slice(-MOST), photo);
}

/** Takes the last one told back. */
export const takeBack = (photo: HTMLCanvasElement): void => lay(marks.value.slice(0, -1), photo);

function lay(all: readonly Mark[], photo: HTMLCanvasElement): void {
  [marks.value, over.value, drifts.value, bump.value] = [all, undefined, [], undefined];
  fault.value = "";
  if (all.length < LEAST) return;
  tried(() => {
    over.value = session.core().plan_in_photo(...flat(all), photo.width, photo.height) as Over;
  });
}

/** Says how far a thing told here stands from its place. */
export function look({ id, spot }: Mark): void {
  tried(() => {
    const found = session.core().drift_in_photo(...flat(marks.value), id, ...spot) as Drift | null;
    if (found) drifts.value = [...drifts.value.filter((each) => each.id !== id), found];
  });
}

/** Moves a thing of the layout to where it was told to stand. */
export function follow({ id, at }: Drift): void {
  const item = session.core().layout() as { items: { id: Id; at: Spot }[] };
  const from = item.items.find((each) => each.id === id)?.at;
  if (from === undefined) return;
  session.moveBy(id, at[0] - from[0], at[1] - from[1]);
  drifts.value = drifts.value.filter((each) => each.id !== id);
}

/** A square of pixels about a place; past the photo's edge it is empty. */
function about(photo: HTMLCanvasElement, [x, y]: Spot, side: number): Uint8Array {
  const context = photo.getContext("2d", { willReadFrequently: true });
  if (context === null) throw new Error(say.noCanvas);
  const half = (side - 1) / 2;
  return new Uint8Array(context.getImageData(x - half, y - half, side, side).data.buffer);
}

/** Reads a second frame and looks for the marks of the first in it. */
export async function compare(file: File, first: HTMLCanvasElement, second: HTMLCanvasElement): Promise<void> {
  [bump.value, which.value, fault.value] = [undefined, "first", ""];
  try {
    await drawPhoto(file, second);
    if (second.width !== first.width || second.height !== first.height) throw new Error(say.bumpSizes);
    const found = marks.value.map(({ spot }) => ({
      spot,
      found: Planner.found_again(about(first, spot, SIDE), SIDE, about(second, spot, WIDE), WIDE),
    }));
    const there = found.filter((each) => each.found.length === 3);
    if (there.length < LEAST) throw new Error(say.bumpLost({ count: found.length - there.length }));
    const pairs = there.flatMap(({ spot: [x, y], found: [dx = 0, dy = 0] }) => [x, y, x + dx, y + dy]);
    const stops = there.map((each) => each.found[2] ?? 0);
    bump.value = session.core().frames_compared(
      first.width, first.height, Float64Array.from(pairs), Float64Array.from(stops),
    ) as Bump;
  } catch (error) {
    fault.value = session.message(error);
  }
}

/** Shows the first frame, the second, or what differs between them. */
export function show(wanted: Which, first: HTMLCanvasElement, second: HTMLCanvasElement, on: HTMLCanvasElement): void {
  which.value = wanted;
  [on.width, on.height] = [first.width, first.height];
  const context = on.getContext("2d");
  if (context === null) return;
  context.globalCompositeOperation = "source-over";
  context.drawImage(wanted === "second" ? second : first, 0, 0);
  if (wanted !== "apart") return;
  context.globalCompositeOperation = "difference";
  context.drawImage(second, 0, 0);
}
