// The places along the table's edge, under a finger: a tap lets the chosen hand
// come from one, a drag moves one along. Where they are the core says.

import { act } from "./acts";
import * as session from "./session";
import type { Window } from "./stage";
import * as state from "./state";

/** How far a finger reaches: what it takes is at least 44 px across. */
const REACH_PX = 22;

/** Where a place was taken; nothing when none is in hand. */
let from: [number, number] | undefined;

const reach = (view: Window): number => REACH_PX * view.scale;

/** Takes up a place someone sits at; false when none is there. */
export function take(view: Window, x: number, y: number): boolean {
  const taken = state.seated.value && session.core().slide(x, y, reach(view));
  from = taken ? [x, y] : undefined;
  return taken;
}

/** Follows the finger; false when no place is in hand. */
export function follow(dx: number, dy: number): boolean {
  if (from === undefined) return false;
  session.core().slide_to(from[0] + dx, from[1] + dy);
  return true;
}

/** Lets go: what is kept is one step; false when no place was in hand. */
export function end(keep: boolean): boolean {
  if (from === undefined) return false;
  from = undefined;
  if (keep) session.act(() => session.core().slid(true));
  else session.core().slid(false);
  return true;
}

/** A tap: the chosen hand comes from there, or the hand of who sits there is chosen. */
export function tap(view: Window, x: number, y: number): boolean {
  if (!state.seated.value) return false;
  const place = session.core().place_at(x, y, reach(view));
  if (place === undefined) return false;
  const hand = state.chosenHand.value;
  if (hand !== undefined) {
    act.comeTo(hand, x, y, reach(view));
    return true;
  }
  const own = place === 0 ? 0 : session.core().hand_from(place);
  if (own !== 0) session.choose(own);
  return true;
}
