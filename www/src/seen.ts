// What is seen of the table, for what is put down there.

import type { Pair } from "./core";
import type { Window } from "./stage";
import * as state from "./state";

let view: Window | undefined;

/** Follows the window of the picture; nothing when there is no picture. */
export const follow = (window: Window | undefined): void => void (view = window);

/** The middle of what is seen, mm. */
export function middle(): Pair {
  if (view === undefined) return state.layout.value?.frame.at ?? [0, 0];
  const { x, y, width, height } = view.seen;
  return [Math.round(x + width / 2), Math.round(y + height / 2)];
}
