// What stands about the table, under a finger: cards, the light on its ring,
// stand and photographer. What is where, and what comes of it, the core says.

import * as session from "./session";
import type { Window } from "./stage";
import * as state from "./state";

/** How far a finger reaches: what it takes is at least 44 px across. */
const REACH_PX = 22;
/** What the core calls what a finger takes. */
const [LIGHT, STAND, PHOTOGRAPHER] = [1, 2, 3];

let carrying = false;

const reach = (view: Window): number => REACH_PX * view.scale;

/** The card under a finger; 0 for none, and where none is shown. */
export const card = (view: Window, x: number, y: number): number =>
  state.rigged.value ? session.core().card_at(x, y, reach(view)) : 0;

/** Takes up light, stand or photographer; false when none is there. */
export function take(view: Window, x: number, y: number): boolean {
  carrying = state.rigged.value && session.core().carry(x, y, reach(view), state.lit.value);
  if (carrying) state.putting.value = undefined;
  return carrying;
}

/** Follows the finger: its figure; nothing when none of them is in hand. */
export function follow(dx: number, dy: number): string | undefined {
  if (!carrying) return undefined;
  session.core().carry_to(dx, dy);
  return session.core().carry_words();
}

/** Lets go: what is kept is one step; false when none of them was in hand. */
export function end(keep: boolean): boolean {
  if (!carrying) return false;
  carrying = false;
  if (keep) session.act(() => session.core().carried(true));
  else session.core().carried(false);
  return true;
}

/** A tap: where the window is, where stand or photographer go, which card. */
export function tap(view: Window, x: number, y: number): boolean {
  if (!state.rigged.value) return false;
  const { putting } = state;
  if (putting.value !== undefined) {
    const stand = putting.value === "stand";
    putting.value = undefined;
    session.act(() => session.core().put_about(stand, x, y));
    return true;
  }
  const found = card(view, x, y);
  if (found !== 0) {
    session.choose(found);
    state.part.value = "light";
    return true;
  }
  const what = session.core().about_at(x, y, reach(view), state.lit.value);
  if (what === LIGHT) session.act(() => session.core().aim_light(x, y));
  else if (what === STAND) put("stand");
  else if (what === PHOTOGRAPHER) put("photographer");
  return what !== 0;
}

/** The next tap says where it goes. */
export function put(what: state.Putting): void {
  session.choose(undefined);
  state.part.value = "rig";
  state.putting.value = what;
}
