// Drawings nobody waits for: each is made when it is in sight and the hand
// rests, one at a time, so that none of them holds up what a touch or a key does.

import type { RefObject } from "preact";
import { useEffect } from "preact/hooks";

/** How far from the edge of the screen a drawing is made, px. */
const NEAR = "120px";
/** How long nothing new may have come before the first is made, ms. */
const REST = 120;

type Draw = (root: SVGSVGElement) => unknown;

/** What waits to be drawn, in the order it came. */
const waiting = new Map<SVGSVGElement, Draw>();
let due = 0;

function soon(after: number): void {
  clearTimeout(due);
  due = setTimeout(next, after);
}

function next(): void {
  for (const [root, draw] of waiting) {
    waiting.delete(root);
    draw(root);
    if (waiting.size > 0) soon(0);
    return;
  }
}

/** Draws into an element once it is in sight, and anew when one of `on` changes. */
export function useDrawn(root: RefObject<SVGSVGElement | null>, draw: Draw, on: readonly unknown[]): void {
  useEffect(() => {
    const svg = root.current;
    if (svg === null) return undefined;
    const watch = new IntersectionObserver(
      (met) => {
        // A busy page is told at once of all that has happened.
        if (!met.some(({ isIntersecting }) => isIntersecting)) return;
        watch.disconnect();
        waiting.set(svg, draw);
        soon(REST);
      },
      { rootMargin: NEAR },
    );
    watch.observe(svg);
    return () => {
      watch.disconnect();
      waiting.delete(svg);
    };
  }, on);
}
