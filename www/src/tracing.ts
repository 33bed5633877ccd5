// A trace in hand: what fingers and keys on the photo do to it, each step of
// which can be taken back, and the outline the core makes of it.

import { signal } from "@preact/signals";
import { Planner } from "#core";

import { extent } from "./core";
import type { Size } from "./core";
import { enlarge, stepped, within } from "./crosshair";
import type { Spot } from "./crosshair";
import { drawPhoto } from "./photo";
import { core, message } from "./session";
import * as state from "./state";
import { enlarged, far, joined, moved, nearest } from "./trace";
import type { Outline, Trace, View } from "./trace";

export type Aim = "edge" | "draw" | "length";

/** How near a finger must come to what it takes hold of, and to a side it splits, px of the screen. */
const REACH = 12;
const SPLIT = 8;
/** How far a finger moves before it drags, px of the screen. */
const STILL = 5;
/** How far a stroke may be off its points, px of the screen. */
const STROKE = 0.8;
/** Widest the photo is drawn, px. */
const WIDEST = 1600;
/** What a step of enlarging is. */
const STEP = 1.5;
/** How near the edge of what is seen the cross-hair comes before the photo moves on, as a share. */
const MARGIN = 0.1;

const EMPTY: Trace = { points: [], marks: [] };

export class Tracing {
  readonly shown = signal(false);
  readonly fault = signal("");
  readonly aim = signal<Aim>("edge");
  readonly now = signal(EMPTY);
  readonly past = signal<Trace[]>([]);
  /** The stroke that is being drawn. */
  readonly stroke = signal<Spot[]>([]);
  /** The point that keys and buttons move. */
  readonly picked = signal<number | undefined>(undefined);
  readonly at = signal<Spot>([0, 0]);
  /** Whether cross-hair and loupe are shown. */
  readonly aiming = signal(false);
  readonly view = signal<View>({ x: 0, y: 0, wide: 1 });
  /** The known length as it was typed. */
  readonly known = signal("");
  readonly outline = signal<Outline | undefined>(undefined);
  canvas: HTMLCanvasElement | null = null;
  lens: HTMLCanvasElement | null = null;
  #photo: HTMLCanvasElement | undefined;
  #fingers = new Map<number, Spot>();
  /** What the finger does: where it came down, what it holds, and what there was before. */
  #hand: { from: Spot; hold: number | undefined; before: Trace; drags: boolean } | undefined;

  constructor(readonly found: (outline: Outline | undefined) => void) {}

  /** Width and height of the photo, px. */
  get whole(): Spot {
    return [this.#photo?.width || 1, this.#photo?.height || 1];
  }
  /** Pixels of the photo in one of the screen. */
  get unit(): number {
    return this.view.value.wide / (this.canvas?.clientWidth || 1);
  }

  /** Lets the photo go and all that was traced over it. */
  away(): void {
    for (const each of [this.#photo, this.canvas]) if (each) [each.width, each.height] = [0, 0];
    this.#photo = undefined;
    [this.shown.value, this.now.value, this.past.value] = [false, EMPTY, []];
    [this.picked.value, this.stroke.value, this.aim.value] = [undefined, [], "edge"];
    this.settle();
  }

  async choose(file: File): Promise<void> {
    this.away();
    const read = document.createElement("canvas");
    try {
      await drawPhoto(file, read);
      if (this.canvas === null) return;
      this.#photo = read;
      this.canvas.width = Math.min(read.width, WIDEST);
      this.canvas.height = Math.max(1, Math.round((this.canvas.width / read.width) * read.height));
      this.shown.value = true;
      this.#show({ x: 0, y: 0, wide: read.width });
      this.#look([read.width / 2, read.height / 2]);
    } catch (error) {
      this.away();
      this.fault.value = message(error);
    }
  }

  /** Has the core make an outline of what there is. */
  settle(): void {
    const { points, marks } = this.now.value;
    const inches = state.layout.value?.units === "in";
    const length = Number(this.known.value.replace(",", ".")) * (inches ? 25.4 : 10);
    [this.outline.value, this.fault.value] = [undefined, ""];
    if (points.length >= 3 && marks.length === 2 && this.known.value.trim() !== "") {
      try {
        const flat = (spots: readonly Spot[]): Float64Array => Float64Array.from(spots.flat());
        const size = core().trace(flat(points), flat(marks), length) as Size & { shape: "outline" };
        const [width, depth] = extent(size);
        this.outline.value = { points: size.points, width, depth };
      } catch (error) {
        this.fault.value = message(error);
      }
    }
    this.found(this.outline.value);
  }

  #look(spot: Spot): void {
    if (this.#photo === undefined) return;
    this.at.value = within(this.#photo, spot);
    enlarge(this.#photo, this.at.value, this.lens);
  }

  #show(view: View): void {
    this.view.value = view;
    const paper = this.canvas?.getContext("2d");
    if (!paper || this.#photo === undefined) return;
    const [width, height] = this.whole;
    const high = (view.wide / width) * height;
    const { width: across, height: down } = paper.canvas;
    paper.drawImage(this.#photo, view.x, view.y, view.wide, high, 0, 0, across, down);
  }

  /** Makes a step that can be taken back. */
  #take(next: Trace, before = this.now.value): void {
    this.past.value = [...this.past.value, before];
    this.now.value = next;
    this.settle();
  }

  back(): void {
    const last = this.past.value.at(-1);
    if (last === undefined) return;
    this.past.value = this.past.value.slice(0, -1);
    [this.now.value, this.picked.value] = [last, undefined];
    this.settle();
  }

  get #list(): "points" | "marks" {
    return this.aim.value === "length" ? "marks" : "points";
  }
  #put(place: number, spot: Spot): Trace {
    const trace = this.now.value;
    return { ...trace, [this.#list]: trace[this.#list].map((old, n) => (n === place ? spot : old)) };
  }

  /** Sets a point or a mark where the cross-hair is. */
  #set(): void {
    const { points, marks } = this.now.value;
    const at = this.at.value;
    if (this.aim.value === "length") this.#take({ points, marks: [...marks, at].slice(-2) });
    else this.#take({ points: joined(points, at, SPLIT * this.unit), marks });
    this.picked.value = undefined;
  }

  remove(): void {
    const { value: picked } = this.picked;
    if (picked === undefined) return;
    const { points, marks } = this.now.value;
    this.#take({ points: points.filter((_, n) => n !== picked), marks });
    this.picked.value = undefined;
  }

  /** Moves the point picked by pixels of the screen. */
  shift(dx: number, dy: number): void {
    const spot = this.now.value.points[this.picked.value ?? -1];
    if (spot !== undefined) this.#nudge([spot[0] + dx * this.unit, spot[1] + dy * this.unit]);
  }

  /** Brings the cross-hair, and the point picked with it, somewhere; the photo moves along. */
  #nudge(to: Spot): void {
    this.#look(to);
    if (this.picked.value !== undefined) this.#take(this.#put(this.picked.value, this.at.value));
    const { x, y, wide } = this.view.value;
    const [width, height] = this.whole;
    const over = (c: number, low: number, span: number): number =>
      Math.min(0, c - low - span * MARGIN) + Math.max(0, c - low - span * (1 - MARGIN));
    const [px, py] = this.at.value;
    const by: Spot = [over(px, x, wide), over(py, y, (wide / width) * height)];
    this.#show(moved(this.view.value, by, [width, height]));
  }

  /** Enlarges by steps about a place that stays where it is. */
  zoom(steps: number, about = this.at.value): void {
    this.#show(enlarged(this.view.value, STEP ** steps, about, this.whole));
  }

  #place(x: number, y: number): Spot {
    const box = this.canvas?.getBoundingClientRect();
    const { x: left, y: top } = this.view.value;
    return [left + (x - (box?.left ?? 0)) * this.unit, top + (y - (box?.top ?? 0)) * this.unit];
  }

  /** Puts everything back to before the finger came down. */
  #off(): void {
    if (this.#hand !== undefined) this.now.value = this.#hand.before;
    this.#hand = undefined;
    [this.stroke.value, this.aiming.value] = [[], false];
  }

  readonly down = (event: PointerEvent): void => {
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    this.#fingers.set(event.pointerId, [event.clientX, event.clientY]);
    // Two fingers enlarge and move the photo.
    if (this.#fingers.size > 1) return this.#off();
    const from = this.#place(event.clientX, event.clientY);
    const before = this.now.value;
    const spots = before[this.#list];
    const draws = this.aim.value === "draw";
    const hold = draws ? undefined : nearest(spots, from, REACH * this.unit);
    this.#hand = { from, hold, before, drags: false };
    if (draws) this.stroke.value = [from];
    this.aiming.value = true;
    this.#look(spots[hold ?? -1] ?? from);
  };

  readonly move = (event: PointerEvent): void => {
    const before = this.#fingers.get(event.pointerId);
    if (before === undefined) return;
    const to: Spot = [event.clientX, event.clientY];
    if (this.#fingers.size === 2) this.#pinch(event.pointerId, before, to);
    this.#fingers.set(event.pointerId, to);
    const doing = this.#hand;
    if (doing === undefined) return;
    const spot = this.#place(...to);
    doing.drags ||= far(spot, doing.from) > STILL * this.unit;
    if (doing.hold === undefined) {
      this.#look(spot);
      const last = this.stroke.value.at(-1);
      if (last !== undefined && far(spot, last) > this.unit) this.stroke.value = [...this.stroke.value, spot];
      return;
    }
    if (!doing.drags) return;
    // It keeps its place to the finger.
    const start = doing.before[this.#list][doing.hold] ?? spot;
    this.#look([start[0] + spot[0] - doing.from[0], start[1] + spot[1] - doing.from[1]]);
    this.now.value = this.#put(doing.hold, this.at.value);
  };

  #pinch(id: number, before: Spot, to: Spot): void {
    const still = [...this.#fingers].find(([other]) => other !== id)?.[1];
    if (still === undefined) return;
    const by: Spot = [((before[0] - to[0]) / 2) * this.unit, ((before[1] - to[1]) / 2) * this.unit];
    const panned = moved(this.view.value, by, this.whole);
    this.view.value = panned;
    const middle = this.#place((to[0] + still[0]) / 2, (to[1] + still[1]) / 2);
    const factor = (far(to, still) || 1) / (far(before, still) || 1);
    this.#show(enlarged(panned, factor, middle, this.whole));
  }

  readonly up = (event: PointerEvent): void => {
    this.#fingers.delete(event.pointerId);
    const doing = this.#hand;
    [this.#hand, this.aiming.value] = [undefined, false];
    if (doing === undefined) return;
    if (this.aim.value === "draw") this.#drawn();
    else if (doing.hold === undefined) this.#set();
    else if (doing.drags) this.#take(this.now.value, doing.before);
    else if (this.aim.value === "edge") {
      this.picked.value = this.picked.value === doing.hold ? undefined : doing.hold;
    }
  };

  readonly cancel = (event: PointerEvent): void => {
    this.#fingers.delete(event.pointerId);
    this.#off();
  };

  #drawn(): void {
    const line = Float64Array.from(this.stroke.value.flat());
    this.stroke.value = [];
    const thin = Planner.thin_stroke(line, STROKE * this.unit);
    const spot = (n: number): Spot => [thin[2 * n] ?? 0, thin[2 * n + 1] ?? 0];
    const points = Array.from({ length: thin.length / 2 }, (_, n) => spot(n));
    if (points.length < 3) return;
    this.#take({ ...this.now.value, points });
    // What was drawn is mended point by point.
    this.aim.value = "edge";
  }

  readonly key = (event: KeyboardEvent): void => {
    const { points } = this.now.value;
    const to = stepped(points[this.picked.value ?? -1] ?? this.at.value, event);
    const acts: Record<string, () => void> = {
      Enter: () => {
        const edge = this.aim.value === "edge";
        const near = edge ? nearest(points, this.at.value, SPLIT * this.unit) : undefined;
        if (this.picked.value !== undefined) this.picked.value = undefined;
        else if (near !== undefined) this.picked.value = near;
        else this.#set();
      },
      Delete: () => this.remove(),
      Backspace: () => this.back(),
      "+": () => this.zoom(1),
      "-": () => this.zoom(-1),
    };
    const act = to === undefined ? acts[event.key] : () => this.#nudge(to);
    if (act === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    this.aiming.value = true;
    act();
  };
}
