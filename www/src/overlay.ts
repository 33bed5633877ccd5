// What lies over the drawing: the outline of the chosen thing, its handle, the
// lines it snaps to and, clear of the finger, its figure.

import { make, Picks, set, shape } from "./outlines";
import type { Finger } from "./gestures";
import { Loupe } from "./loupe";
import { core } from "./session";
import type { Window } from "./stage";
import * as state from "./state";

const HANDLE_PX = 22;
const CLEAR_PX = 30;

/** Outlines of what moves along with a thing: the rest of its group. */
function along(id: number): string {
  const items = state.layout.value?.items ?? [];
  const group = items.find((item) => item.id === id)?.group;
  if (group === undefined) return "";
  const others = items.filter((item) => item.group === group && item.id !== id);
  return others.map((item) => shape(core().outline(item.id))).join("");
}

export class Overlay {
  #picks = new Picks();
  /** Light on dark, so that it is seen on the board and on linen. */
  #outline = [make("path", "chosen-casing"), make("path", "chosen")];
  #stem = make("path", "chosen");
  #handle = make("circle", "handle");
  /** What follows the thing. */
  #moving = make("g", "moving");
  #guides = make("path", "guide");
  #lines = "";
  #knob: [number, number] | undefined;
  #centre: [number, number] = [0, 0];
  #loupe: Loupe;

  constructor(root: SVGGElement, lens: HTMLElement) {
    this.#loupe = new Loupe(lens);
    this.#moving.append(this.#picks.free, ...this.#outline, this.#stem, this.#handle);
    root.replaceChildren(this.#picks.root, this.#guides, this.#moving);
  }

  /** Draws the chosen thing's outline and handle, or nothing. */
  show(view: Window): void {
    const id = state.chosen.value;
    this.#picks.show(view.scale);
    const points = id === undefined ? this.#picks.points : [...core().outline(id)];
    const others = id === undefined || state.inside.value ? "" : along(id);
    this.#knob = undefined;
    if (points.length < 6) {
      this.#draw("", view);
      set(this.#stem, { d: "" });
      set(this.#handle, { r: 0 });
      return;
    }
    const px = view.scale;
    const pairs: string[] = [];
    let [top, left, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let n = 0; n < points.length; n += 2) {
      const [x, y] = [points[n] ?? 0, points[n + 1] ?? 0];
      pairs.push(`${x.toFixed(1)} ${y.toFixed(1)}`);
      [top, bottom] = [Math.min(top, y), Math.max(bottom, y)];
      [left, right] = [Math.min(left, x), Math.max(right, x)];
    }
    this.#centre = this.#picks.middle ?? [(left + right) / 2, (top + bottom) / 2];
    const drawn = id === undefined ? "" : `M${pairs.join("L")}Z${others}`;
    this.#draw(drawn, view);
    if (id !== undefined && !core().can_turn(id)) {
      set(this.#stem, { d: "" });
      set(this.#handle, { r: 0 });
      return;
    }
    const x = this.#centre[0];
    const y = top - CLEAR_PX * px < view.seen.y ? bottom + CLEAR_PX * px : top - CLEAR_PX * px;
    this.#knob = [x, y];
    set(this.#stem, { d: `M${x} ${y < top ? top : bottom}V${y}`, "stroke-width": 1.6 * px });
    set(this.#handle, { cx: x, cy: y, r: 8 * px, "stroke-width": 2.4 * px });
  }

  /** Draws the outline of the chosen thing. */
  #draw(d: string, { scale }: Window): void {
    for (const [n, line] of this.#outline.entries()) set(line, { d, "stroke-width": (n === 0 ? 5 : 2.4) * scale });
  }

  /** Takes up what is to be dragged or turned. */
  take(ids: readonly number[], finger: boolean): void {
    this.#moving.toggleAttribute("data-lifted", true);
    this.#loupe.begin(ids, finger);
  }

  /** Shows a drag: outline and figures follow, the figure clear of the finger. */
  follow(view: Window, finger: Finger): void {
    const planner = core();
    const [dx, dy] = [planner.drag_x, planner.drag_y];
    // An arm follows its hand, which turns as it goes.
    const hand = shape(planner.drag_outline());
    if (hand === "") set(this.#moving, { transform: `translate(${dx} ${dy})` });
    else this.#draw(hand, view);
    const { x, y, width, height } = view.seen;
    const upright = planner.guide_x;
    const level = planner.guide_y;
    const lines =
      (Number.isNaN(upright) ? "" : `M${upright} ${y}v${height}`) +
      (Number.isNaN(level) ? "" : `M${x} ${level}h${width}`);
    this.#guide(lines, view);
    this.#loupe.follow(dx, dy, lines, "");
    this.#loupe.say(planner.drag_words(), finger, view.wide);
  }

  /** Shows the figure of what is carried beside the table, clear of the finger. */
  tell(view: Window, finger: Finger, words: string): void {
    this.#loupe.alone();
    this.#loupe.say(words, finger, view.wide);
  }

  /** Draws the lines it rests against, when they are others than before. */
  #guide(lines: string, view: Window): void {
    if (lines === this.#lines) return;
    this.#lines = lines;
    set(this.#guides, {
      d: lines,
      "stroke-width": 1.4 * view.scale,
      "stroke-dasharray": `${6 * view.scale} ${4 * view.scale}`,
    });
  }

  /** Whether a place is on the handle. */
  onHandle(view: Window, x: number, y: number): boolean {
    if (this.#knob === undefined) return false;
    const reach = HANDLE_PX * view.scale;
    return Math.hypot(x - this.#knob[0], y - this.#knob[1]) < reach;
  }

  /** Turns the chosen thing so that its handle points to the finger; returns how far, degrees. */
  turn(view: Window, x: number, y: number, finger: Finger): number {
    if (this.#knob === undefined) return 0;
    const [cx, cy] = this.#centre;
    const angle = (px: number, py: number): number => Math.atan2(py - cy, px - cx);
    const by = ((angle(x, y) - angle(...this.#knob)) * 180) / Math.PI;
    const degrees = core().turn_to(by);
    const turned = `rotate(${degrees} ${cx} ${cy})`;
    set(this.#moving, { transform: turned });
    this.#loupe.follow(0, 0, "", turned);
    this.#loupe.say(core().drag_words(), finger, view.wide);
    return degrees;
  }

  /** Back to rest after a drag or a turn. */
  rest(view: Window): void {
    this.#loupe.end();
    this.#guide("", view);
    this.#moving.removeAttribute("transform");
    this.#moving.toggleAttribute("data-lifted", false);
    this.show(view);
  }
}
