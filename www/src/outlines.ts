// Outlines drawn over the picture, and those of all that is picked.

import { core } from "./session";
import * as state from "./state";

const SVG = "http://www.w3.org/2000/svg";

export function make(name: string, kind: string): SVGElement {
  const element = document.createElementNS(SVG, name);
  element.setAttribute("class", kind);
  return element;
}
export function set(element: SVGElement, values: Record<string, string | number>): void {
  for (const [name, value] of Object.entries(values)) element.setAttribute(name, String(value));
}

/** Points, x and y in turn, as a closed line. */
export function shape(points: Float64Array): string {
  let d = "";
  for (let n = 0; n + 1 < points.length; n += 2) {
    d += `${n === 0 ? "M" : "L"}${points[n]?.toFixed(1)} ${points[n + 1]?.toFixed(1)}`;
  }
  return d === "" ? "" : `${d}Z`;
}

/** A light line on a dark one: it is seen on the board and on linen alike. */
class Cased {
  readonly root = make("g", "picks");
  readonly #lines = [make("path", "casing"), make("path", "line")];

  constructor() {
    this.root.append(...this.#lines);
  }

  show(d: string, px: number, dashes: string): void {
    for (const [n, line] of this.#lines.entries()) {
      set(line, { d, "stroke-width": (n === 0 ? 4.8 : 2.2) * px, "stroke-dasharray": n === 0 ? "" : dashes });
    }
  }
}

/** Outlines of what is picked; those of what is locked are broken, and stay. */
export class Picks {
  readonly #free = new Cased();
  readonly #locked = new Cased();
  /** The outlines of what can move, x and y in turn. */
  points: number[] = [];
  /** What it turns about; nothing when none of it can. */
  middle: [number, number] | undefined;

  /** What stays in a drag. */
  get root(): SVGElement {
    return this.#locked.root;
  }

  /** What follows a drag. */
  get free(): SVGElement {
    return this.#free.root;
  }

  show(px: number): void {
    const ids = Uint16Array.from(state.picked.value);
    const free = new Set(core().free_of(ids));
    const outlines = [...ids].map((id) => [id, core().outline(id)] as const);
    const moving = outlines.filter(([id]) => free.has(id)).map(([, points]) => points);
    const staying = outlines.filter(([id]) => !free.has(id)).map(([, points]) => points);
    this.#free.show(moving.map(shape).join(""), px, "");
    this.#locked.show(staying.map(shape).join(""), px, `${3 * px} ${4 * px}`);
    this.points = moving.flatMap((points) => [...points]);
    const [x, y] = core().middle_of(ids);
    this.middle = x === undefined || y === undefined ? undefined : [x, y];
  }
}
