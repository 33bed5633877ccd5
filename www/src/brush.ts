// A path brushed over the picture, along which something is strewn.

import * as session from "./session";
import * as state from "./state";

/** Places nearer than this to the one before are one, mm. */
const NEAR = 12;

let path: number[] = [];
let trail: SVGPolylineElement | null = null;

/** Shows the path as it is brushed. */
export function showOn(line: SVGPolylineElement | null): void {
  trail = line;
}

const shown = (): void => trail?.setAttribute("points", path.join(" "));

/** Puts the brush down; false when none is taken up. */
export function down(x: number, y: number): boolean {
  if (state.brush.value === undefined) return false;
  path = [Math.round(x), Math.round(y)];
  shown();
  return true;
}

export function on(x: number, y: number): void {
  const [lastX, lastY] = path.slice(-2);
  if (lastX === undefined || lastY === undefined) return;
  if (Math.hypot(x - lastX, y - lastY) < NEAR) return;
  path.push(Math.round(x), Math.round(y));
  shown();
}

/** Lifts the brush: what it went over is strewn. */
export function up(): void {
  const [brush, along] = [state.brush.value, Int32Array.from(path)];
  away();
  if (brush === undefined || along.length === 0) return;
  session.act(() => session.core().strew(brush.prop, along, brush.amount));
}

/** Forgets the path in hand. */
export function away(): void {
  path = [];
  shown();
}
