// Buttons whose deed keeps the page busy: they are seen to be pressed first, and
// what comes in their place is not pressed by the second half of a double tap.

import { useSignal } from "@preact/signals";

import { painted } from "../after";

/** So long, and so wide about what was pressed, another touch is still the same one; ms, px. */
const DOUBLE_MS = 400;
const DOUBLE_PX = 60;

/** Covers the place of a press; returns what uncovers it a little later. */
function cover({ clientX, clientY, detail }: MouseEvent): () => void {
  // By a key, which is pressed no second time.
  if (detail === 0) return () => undefined;
  const shield = document.createElement("div");
  const side = `${DOUBLE_PX}px`;
  const [left, top] = [`${clientX - DOUBLE_PX / 2}px`, `${clientY - DOUBLE_PX / 2}px`];
  Object.assign(shield.style, { position: "fixed", zIndex: "9", left, top, width: side, height: side });
  // Focus stays where it is.
  shield.onmousedown = (event) => event.preventDefault();
  document.body.append(shield);
  return () => void setTimeout(() => shield.remove(), DOUBLE_MS);
}

/** What a button of such a deed has: it is marked as pressed before `run` begins, and runs once a press. */
export function useTaken(run: () => void): { "aria-busy": boolean; onClick: (event: MouseEvent) => void } {
  const busy = useSignal(false);
  return {
    "aria-busy": busy.value,
    onClick: (event) => {
      if (busy.value) return;
      busy.value = true;
      const uncover = cover(event);
      painted(() => {
        busy.value = false;
        uncover();
        run();
      });
    },
  };
}
