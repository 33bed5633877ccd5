// Buttons whose deed keeps the page busy: they are seen to be pressed first.

import { useSignal } from "@preact/signals";

import { painted } from "../after";

/** What a button of such a deed has: it is marked as pressed before `run` begins, and runs once a press. */
export function useTaken(run: () => void): { "aria-busy": boolean; onClick: () => void } {
  const busy = useSignal(false);
  return {
    "aria-busy": busy.value,
    onClick: () => {
      if (busy.value) return;
      busy.value = true;
      painted(() => {
        busy.value = false;
        run();
      });
    },
  };
}
