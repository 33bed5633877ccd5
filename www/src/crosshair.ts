// A cross-hair over a photo: how keys move it, and what lies under it enlarged.

/** A place in a photo, px. */
export type Spot = [number, number];

/** What a step of the cross-hair is by keys, px, and with Shift. */
const STEPS = [16, 1] as const;
const WAYS: Record<string, Spot> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
/** Pixels of the photo across the loupe. */
const SEEN = 48;

/** Where an arrow key brings the cross-hair; undefined for another key. */
export function stepped([x, y]: Spot, event: KeyboardEvent): Spot | undefined {
  const way = WAYS[event.key];
  if (way === undefined) return undefined;
  const step = STEPS[event.shiftKey ? 1 : 0];
  return [x + way[0] * step, y + way[1] * step];
}

/** The nearest whole pixel of the photo. */
export function within(photo: HTMLCanvasElement, [x, y]: Spot): Spot {
  const nearest = (c: number, most: number): number => Math.max(0, Math.min(most - 1, Math.round(c)));
  return [nearest(x, photo.width), nearest(y, photo.height)];
}

/** Shows in a loupe what lies about a place of the photo. */
export function enlarge(photo: HTMLCanvasElement, [x, y]: Spot, lens: HTMLCanvasElement | null): void {
  const glass = lens?.getContext("2d");
  if (!glass) return;
  const { width } = glass.canvas;
  glass.imageSmoothingEnabled = false;
  glass.clearRect(0, 0, width, width);
  glass.drawImage(photo, x - SEEN / 2, y - SEEN / 2, SEEN, SEEN, 0, 0, width, width);
}
