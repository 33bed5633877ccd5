// Something strewn along a line drawn over the picture.

import * as session from "./session";
import type { Window } from "./stage";
import * as state from "./state";
import * as trail from "./trail";

const NAME = "brushed";

/** Puts the brush down; false when none is taken up. */
export function down(view: Window, x: number, y: number): boolean {
  if (state.brush.value === undefined) return false;
  trail.begin(NAME, view, x, y);
  return true;
}

/** Lifts the brush: what it went over is strewn; false when it was not down. */
export function up(): boolean {
  if (!trail.drawn(NAME)) return false;
  const [brush, along] = [state.brush.value, Int32Array.from(trail.end())];
  if (brush === undefined) return false;
  return session.act(() => session.core().strew(brush.prop, along, brush.amount)) || true;
}
