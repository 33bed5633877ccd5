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
/** How wide it is, px; as the style says. */
const ACROSS = 96;

function path(kind: string, d = ""): SVGPathElement {
  const made = document.createElementNS(SVG, "path");
  made.setAttribute("class", kind);
  made.setAttribute("d", d);
  return made;
}

function group(kind: string): SVGGElement {
  const made = document.createElementNS(SVG, "g");
  made.setAttribute("class", kind);
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
  /** What is around it, which moves past it: the thing stays in the middle. */
  #around = group("around");
  #near = group("near");
  #lines = path("guide");
  #own = path("own");
  #words = document.createElement("span");
  #drawn = "";
  #right = false;

  constructor(readonly box: HTMLElement) {
    this.#around.append(this.#near, this.#lines);
    this.#svg.append(this.#around, this.#own);
    this.#svg.setAttribute("aria-hidden", "true");
    box.replaceChildren(this.#svg, this.#words);
  }

  /** Takes up things: from here on only numbers change. */
  begin(ids: readonly number[], finger: boolean): void {
    const own = outline(ids);
    const [left, top, right, bottom] = own.box;
    const side = Math.max(right - left, bottom - top) * ROOM;
    const [x, y] = [(left + right - side) / 2, (top + bottom - side) / 2];
    this.#svg.setAttribute("viewBox", `${x} ${y} ${side} ${side}`);
    // In mm, so that the lines are not reckoned anew as they move.
    const px = side / ACROSS;
    this.#near.setAttribute("stroke-width", `${1.6 * px}`);
    this.#own.setAttribute("stroke-width", `${2.4 * px}`);
    this.#lines.setAttribute("stroke-width", `${1.6 * px}`);
    this.#lines.setAttribute("stroke-dasharray", `${5 * px} ${4 * px}`);
    this.#own.setAttribute("d", own.d);
    this.follow(0, 0, "", "");
    // A mouse hides nothing.
    this.#svg.toggleAttribute("hidden", !finger);
    if (!finger) return;
    const layout = state.layout.value;
    const lying = [...(layout?.items ?? []), ...(layout?.linens ?? [])];
    const near = lying.filter((each) => !ids.includes(each.id));
    // One by one, so that those out of sight cost nothing.
    this.#near.replaceChildren(...near.map((each) => path("lies", shape(core().outline(each.id)))));
  }

  /** Shows words alone, of what lies beside the table. */
  alone(): void {
    this.#svg.toggleAttribute("hidden", true);
  }

  /** Shows how far the thing has come and what it rests against. */
  follow(dx: number, dy: number, lines: string, turn: string): void {
    this.#around.setAttribute("transform", `translate(${-dx} ${-dy})`);
    this.#own.setAttribute("transform", turn);
    if (lines === this.#drawn) return;
    this.#drawn = lines;
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
