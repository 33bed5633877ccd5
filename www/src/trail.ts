// A line drawn over the picture with one finger, shown as it is drawn.

import type { Window } from "./stage";

/** Places nearer than this to the one before are one, CSS px. */
const NEAR_PX = 4;

let path: number[] = [];
let kind = "";
let near = 0;
let lines: SVGPolylineElement[] = [];

/** Takes the lines that show it, one over the other. */
export function showOn(group: SVGGElement | null): void {
  lines = group === null ? [] : [...group.querySelectorAll("polyline")];
}

function show(): void {
  const points = path.join(" ");
  for (const line of lines) line.setAttribute("points", points);
}

/** Begins a line; `of` names what is drawn, for the style of it. */
export function begin(of: string, view: Window, x: number, y: number): void {
  kind = of;
  near = NEAR_PX * view.scale;
  path = [Math.round(x), Math.round(y)];
  for (const line of lines) line.setAttribute("class", `trail ${of}`);
  show();
}

export function on(x: number, y: number): void {
  const [lastX, lastY] = path.slice(-2);
  if (lastX === undefined || lastY === undefined) return;
  if (Math.hypot(x - lastX, y - lastY) < near) return;
  path.push(Math.round(x), Math.round(y));
  show();
}

/** Whether a line of this sort is being drawn. */
export const drawn = (of: string): boolean => path.length > 0 && kind === of;

/** Ends the line: the places it went through, x and y in turn. */
export function end(): number[] {
  const whole = path;
  path = [];
  show();
  return whole;
}
