// What a finger hides, shown clear of it: the dragged thing's outline among its
// neighbours and the figure, in the corner away from the finger. Nothing here
// asks the page for its measures, so a drag never waits for a layout.

import type { Finger } from "./gestures";
import { shape } from "./outlines";
import { core } from "./session";
import * as state from "./state";

const SVG = "http://www.w3.org/2000/svg";
/** How much more than the thing is seen, across. */
const ROOM = 1.7;

function path(kind: string): SVGPathElement {
  const made = document.createElementNS(SVG, "path");
  made.setAttribute("class", kind);
  made.setAttribute("vector-effect", "non-scaling-stroke");
  return made;
}

/** The outlines of things as path data, with the box round them. */
function outline(ids: readonly number[]): { d: string; box: [number, number, number, number] } {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  let d = "";
  for (const id of ids) {
    const points = core().outline(id);
    for (let n = 0; n + 1 < points.length; n += 2) {
      const [x, y] = [points[n] ?? 0, points[n + 1] ?? 0];
      [left, right] = [Math.min(left, x), Math.max(right, x)];
      [top, bottom] = [Math.min(top, y), Math.max(bottom, y)];
    }
    d += shape(points);
  }
  return { d, box: [left, top, right, bottom] };
}

export class Loupe {
  #svg = document.createElementNS(SVG, "svg");
  #near = path("near");
  #lines = path("guide");
  #own = path("own");
  #words = document.createElement("span");
  #centre: [number, number] = [0, 0];
  #side = 100;
  #right = false;

  constructor(readonly box: HTMLElement) {
    this.#svg.append(this.#near, this.#lines, this.#own);
    this.#svg.setAttribute("aria-hidden", "true");
    box.replaceChildren(this.#svg, this.#words);
  }

  /** Takes up things: from here on only numbers change. */
  begin(ids: readonly number[], finger: boolean): void {
    const own = outline(ids);
    const [left, top, right, bottom] = own.box;
    this.#centre = [(left + right) / 2, (top + bottom) / 2];
    this.#side = Math.max(right - left, bottom - top) * ROOM;
    this.#own.setAttribute("d", own.d);
    this.#lines.setAttribute("d", "");
    // A mouse hides nothing.
    this.#svg.toggleAttribute("hidden", !finger);
    if (!finger) return;
    const layout = state.layout.value;
    const lying = [...(layout?.items ?? []), ...(layout?.linens ?? [])];
    const near = lying.filter((each) => !ids.includes(each.id)).map((each) => shape(core().outline(each.id)));
    this.#near.setAttribute("d", near.join(""));
  }

  /** Shows how far the thing has come and what it rests against. */
  follow(dx: number, dy: number, lines: string, turn: string): void {
    const [x, y] = [this.#centre[0] + dx, this.#centre[1] + dy];
    const half = this.#side / 2;
    this.#svg.setAttribute("viewBox", `${x - half} ${y - half} ${this.#side} ${this.#side}`);
    this.#own.setAttribute("transform", turn === "" ? `translate(${dx} ${dy})` : turn);
    this.#lines.setAttribute("d", lines);
  }

  /** Says the figure, in the upper corner away from the finger. */
  say(words: string, finger: Finger, wide: number): void {
    const right = finger.x < wide / 2;
    if (this.box.hidden || right !== this.#right) {
      this.box.classList.toggle("right", right);
      this.#right = right;
    }
    this.box.hidden = false;
    if (this.#words.textContent !== words) this.#words.textContent = words;
  }

  end(): void {
    this.box.hidden = true;
  }
}
