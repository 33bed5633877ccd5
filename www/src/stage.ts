// The window onto the drawing: which part of the table is seen, and how large.

import type { Layout } from "./core";

/** A rectangle on the table, mm. */
export interface Seen {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A frame of the camera and this share of its width on every side. */
export function framed({ ratio: [wide, high], at, width, turn }: Layout["frame"], margin: number): Seen {
  const height = (width * high) / wide;
  const turned = turn % 180 === 90;
  const [across, down] = turned ? [height, width] : [width, height];
  const past = across * margin;
  return {
    x: at[0] - across / 2 - past,
    y: at[1] - down / 2 - past,
    width: across + 2 * past,
    height: down + 2 * past,
  };
}

const LEAST_MM = 60;
const MOST_MM = 20_000;

export class Window {
  seen: Seen = { x: 0, y: 0, width: 1000, height: 700 };
  #whole: Seen = this.seen;

  constructor(
    /** What shows it, all of one size. */
    readonly sheets: readonly [SVGSVGElement, ...SVGSVGElement[]],
    /** Called when the scale has settled after a change. */
    readonly settled: () => void,
    /** Told whether less than the whole is seen, or another part. */
    readonly enlarged: (is: boolean) => void,
  ) {}

  /** Width of the picture, CSS pixels, as of the last fit. */
  wide = 1;

  /** Table mm per CSS pixel. */
  get scale(): number {
    return this.seen.width / this.wide;
  }

  /** Shows all of `whole` and keeps it as what a double tap returns to. */
  fit(whole: Seen): void {
    this.#whole = whole;
    const [{ clientWidth, clientHeight }] = this.sheets;
    const across = Math.max(1, clientWidth);
    this.wide = across;
    const down = Math.max(1, clientHeight);
    const scale = Math.max(whole.width / across, whole.height / down);
    const [width, height] = [across * scale, down * scale];
    this.#show({
      x: whole.x + (whole.width - width) / 2,
      y: whole.y + (whole.height - height) / 2,
      width,
      height,
    });
    this.enlarged(false);
  }

  refit(): void {
    this.fit(this.#whole);
  }

  /** Where a point of the picture, in CSS pixels from its corner, lies on the table. */
  at(x: number, y: number): [number, number] {
    return [this.seen.x + x * this.scale, this.seen.y + y * this.scale];
  }

  /** Moves the picture by pixels of the screen. */
  pan(dx: number, dy: number): void {
    const { x, y, width, height } = this.seen;
    this.#show({ x: x - dx * this.scale, y: y - dy * this.scale, width, height });
    this.enlarged(true);
  }

  /** Enlarges about a place on the table that stays where it is. */
  zoom(factor: number, x: number, y: number): void {
    const width = Math.min(MOST_MM, Math.max(LEAST_MM, this.seen.width / factor));
    const by = width / this.seen.width;
    this.#show({
      x: x + (this.seen.x - x) * by,
      y: y + (this.seen.y - y) * by,
      width,
      height: this.seen.height * by,
    });
    this.enlarged(true);
  }

  /** Brings a place on the table that is out of sight to the middle. */
  reveal(x: number, y: number): void {
    const { x: left, y: top, width, height } = this.seen;
    if (x >= left && x <= left + width && y >= top && y <= top + height) return;
    this.#show({ x: x - width / 2, y: y - height / 2, width, height });
    this.enlarged(true);
  }

  /** Enlarges about the middle of what is seen. */
  enlarge(factor: number): void {
    const { x, y, width, height } = this.seen;
    this.zoom(factor, x + width / 2, y + height / 2);
  }

  #timer = 0;
  #show(seen: Seen): void {
    const scaled = Math.abs(seen.width / this.seen.width - 1) > 1e-6;
    this.seen = seen;
    const { x, y, width, height } = seen;
    for (const svg of this.sheets) svg.setAttribute("viewBox", `${x} ${y} ${width} ${height}`);
    if (!scaled) return;
    clearTimeout(this.#timer);
    this.#timer = window.setTimeout(this.settled, 90);
  }
}
