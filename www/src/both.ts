// Two pictures under one window: what moves or enlarges one does so to both.

import type { Planner } from "#core";

import type { Change } from "./asked";
import type { Layout } from "./core";
import { listen, meantElsewhere, type Acts } from "./gestures";
import { make, set, shape } from "./outlines";
import { another, goOn, isFall } from "./session";
import { framed, Window, type Seen } from "./stage";

/** What is seen round the frame, as a share of its width: the pictures are small. */
const MARGIN = 0.03;
/** How far a key moves them, CSS pixels. */
const PAN_PX = 40;
const KEYS: Record<string, [number, number]> = {
  ArrowLeft: [1, 0],
  ArrowRight: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** One of the two: where it is drawn, and the core that draws it, once it is made. */
interface One {
  file: string;
  box: HTMLElement;
  marks: Marks;
  planner: Planner | undefined;
  /** Whether the core fell over it. */
  fell: boolean;
}

/** What a change is marked with, light on dark: outlines, and from where to where. */
class Marks {
  readonly root = make("g", "picks");
  readonly #lines = [make("path", "casing"), make("path", "line")];

  constructor() {
    this.root.append(...this.#lines);
  }

  show(planner: Planner, change: Change | undefined, px: number): void {
    const outlines = (change?.objects ?? []).map((id) => shape(planner.outline(id)));
    const d = outlines.join("") + way(change?.moved ?? undefined, px);
    for (const [n, line] of this.#lines.entries()) set(line, { d, "stroke-width": (n === 0 ? 5.4 : 2.6) * px });
  }
}

/** A ring where it was, and an arrow to a ring where it is. */
function way(moved: [[number, number], [number, number]] | undefined, px: number): string {
  if (moved === undefined) return "";
  const [[x0, y0], [x1, y1]] = moved;
  const far = Math.hypot(x1 - x0, y1 - y0) || 1;
  const [ux, uy] = [(x1 - x0) / far, (y1 - y0) / far];
  const head = Math.min(14 * px, far / 2);
  const wing = (side: number): string =>
    `M${x1} ${y1}L${x1 - (ux + uy * side * 0.6) * head} ${y1 - (uy - ux * side * 0.6) * head}`;
  const r = 4 * px;
  const ring = `M${x0 - r} ${y0}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
  return `${ring}M${x0} ${y0}L${x1} ${y1}${wing(1)}${wing(-1)}`;
}

/** What both frames lie in. */
function whole(files: readonly string[]): Seen {
  const all = files.map((file) => framed((JSON.parse(file) as Layout).frame, MARGIN));
  const [x, y] = [Math.min(...all.map((s) => s.x)), Math.min(...all.map((s) => s.y))];
  const right = Math.max(...all.map((s) => s.x + s.width));
  const bottom = Math.max(...all.map((s) => s.y + s.height));
  return { x, y, width: right - x, height: bottom - y };
}

/** Nothing is taken in hand here: fingers move and enlarge. */
const LOOK: Acts = {
  grab: () => false,
  drag: () => undefined,
  drop: () => undefined,
  abandon: () => undefined,
  tap: () => undefined,
  counts: () => false,
  handle: () => false,
  turn: () => undefined,
  turned: () => undefined,
};

export class Both {
  readonly #all: One[];
  readonly view: Window;
  readonly #whole: Seen;
  readonly #watch: ResizeObserver;
  #marked: Change | undefined;

  /** Draws these files into these boxes, which hold two sheets each. */
  constructor(boxes: readonly HTMLElement[], files: readonly string[], enlarged: (is: boolean) => void) {
    this.#whole = whole(files);
    this.#all = boxes.map((box, n) => {
      const marks = new Marks();
      box.querySelectorAll("g")[1]?.after(marks.root);
      return { file: files[n] ?? "", box, marks, planner: undefined, fell: false };
    });
    const [first, ...others] = boxes.flatMap((box) => [...box.querySelectorAll("svg")]);
    if (first === undefined) throw new Error();
    this.view = new Window([first, ...others], () => this.#draw(), enlarged);
    for (const { box } of this.#all) {
      listen(box, this.view, LOOK);
      box.addEventListener("keydown", (event) => this.#key(event));
    }
    this.#watch = new ResizeObserver(() => this.fit());
    for (const box of boxes) this.#watch.observe(box);
  }

  fit(): void {
    this.view.fit(this.#whole);
    this.#draw();
  }

  /** Marks a change in both, and shows all again where it lies out of sight. */
  mark(change: Change | undefined): void {
    this.#marked = change;
    const { x, y, width, height } = this.view.seen;
    const out = ([a, b]: [number, number]): boolean =>
      a < x || b < y || a > x + width || b > y + height;
    if (change?.moved?.some(out)) this.fit();
    this.#draw();
  }

  /** Ends it. */
  free(): void {
    this.#watch.disconnect();
    // A drawing that is due yet finds nothing left to draw.
    for (const { planner } of this.#all.splice(0)) planner?.free();
  }

  /** Draws both, each by itself, so that nothing waits for two. */
  #draw(): void {
    for (const one of this.#all) setTimeout(() => this.#drawOne(one));
  }

  #drawOne(one: One): void {
    if (one.fell || !this.#all.includes(one)) return;
    try {
      this.#drawnOn(one);
    } catch (error) {
      if (!isFall(error)) throw error;
      this.#fallen(one);
    }
  }

  /** A core that falls takes all others along: all but what it fell over goes on in fresh ones. */
  #fallen(over: One): void {
    over.fell = true;
    goOn();
    for (const one of this.#all) one.planner = undefined;
    this.#draw();
  }

  #drawnOn(one: One): void {
    if (one.planner === undefined) {
      one.planner = this.#made(one);
      if (one.planner !== undefined) setTimeout(() => this.#drawOne(one));
      return;
    }
    // Of the crops only the one that is marked: all of them would hide the rest.
    const [crop] = this.#marked?.topic === "crop" ? this.#marked.objects : [];
    one.planner.view(this.view.scale, -2, crop ?? -1);
    one.planner.patch();
    one.marks.show(one.planner, this.#marked, this.view.scale);
  }

  /** A core that draws it; none for what cannot be read, of which the reading of both says why. */
  #made({ file, box }: One): Planner | undefined {
    const planner = another();
    try {
      planner.open_json(file);
      const [things, words] = box.querySelectorAll("g");
      if (things !== undefined && words !== undefined) planner.draw_into(things, words);
      return planner;
    } catch (error) {
      if (isFall(error)) throw error;
      planner.free();
      return undefined;
    }
  }

  #key(event: KeyboardEvent): void {
    if (meantElsewhere(event)) return;
    const step = KEYS[event.key];
    if (step !== undefined) this.view.pan(step[0] * PAN_PX, step[1] * PAN_PX);
    else if (["+", "=", "-"].includes(event.key)) {
      this.view.enlarge(event.key === "-" ? 0.8 : 1.25);
    } else if (event.key === "0") this.fit();
    else return;
    event.preventDefault();
  }
}
