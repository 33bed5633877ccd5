// What a trace over a photo is while it is made: points round the edge, two
// marks, and the part of the photo that is looked at.

import type { Pair } from "./core";
import type { Spot } from "./crosshair";

export interface Trace {
  /** Round the edge, in order, px of the photo. */
  points: Spot[];
  /** The ends of the known length, at most two. */
  marks: Spot[];
}
/** An outline as the core makes it of a trace. */
export interface Outline {
  points: Pair[];
  width: number;
  depth: number;
}
/** The part of the photo that is seen: its left top corner and width, px. */
export interface View {
  x: number;
  y: number;
  wide: number;
}

/** How far the photo can be enlarged. */
export const MOST = 8;

/** How far apart two spots are, px. */
export const far = (a: Spot, b: Spot): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Which of the spots is nearest to a place and within reach. */
export function nearest(spots: readonly Spot[], at: Spot, reach: number): number | undefined {
  let found: number | undefined;
  spots.forEach((spot, place) => {
    const best = found === undefined ? reach : far(spots[found] as Spot, at);
    if (far(spot, at) <= best) found = place;
  });
  return found;
}

/** The points with one more: between its neighbours on a side it lies on, else last. */
export function joined(points: readonly Spot[], at: Spot, reach: number): Spot[] {
  let [place, best] = [points.length, reach];
  for (let n = 1; n < points.length; n += 1) {
    const [a, b] = [points[n - 1] as Spot, points[n] as Spot];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const along = ((at[0] - a[0]) * dx + (at[1] - a[1]) * dy) / (dx * dx + dy * dy || 1);
    const share = Math.max(0, Math.min(1, along));
    const off = far(at, [a[0] + share * dx, a[1] + share * dy]);
    if (off < best) [place, best] = [n, off];
  }
  return [...points.slice(0, place), at, ...points.slice(place)];
}

/** The view enlarged about a place that stays where it is; never past the photo. */
export function enlarged(view: View, factor: number, [x, y]: Spot, [width, height]: Spot): View {
  const wide = Math.max(width / MOST, Math.min(width, view.wide / factor));
  const by = wide / view.wide;
  const to = { x: x + (view.x - x) * by, y: y + (view.y - y) * by, wide };
  return moved(to, [0, 0], [width, height]);
}

/** The view moved by pixels of the photo; never past it. */
export function moved(view: View, [dx, dy]: Spot, [width, height]: Spot): View {
  const high = (view.wide / width) * height;
  const kept = (c: number, most: number): number => Math.max(0, Math.min(most, c));
  return { ...view, x: kept(view.x + dx, width - view.wide), y: kept(view.y + dy, height - high) };
}
