// What fingers do to a picture, by taps: it is enlarged, moved and shown whole.

import type { JSX } from "preact";
import * as say from "#words";

import type { Window } from "../stage";

/** How far one tap moves it, CSS pixels, and which way. */
const STEPS: readonly (readonly [string, string, number, number])[] = [
  ["←", say.viewLeft, 80, 0],
  ["↑", say.viewUp, 0, 80],
  ["↓", say.viewDown, 0, -80],
  ["→", say.viewRight, -80, 0],
];

/** At rest only what enlarges it, so that little of the picture is hidden. */
export function Ways({ view, enlarged }: { view: () => Window | undefined; enlarged: boolean }): JSX.Element {
  return (
    <div class="looks" role="group" aria-label={say.view}>
      {enlarged ? (
        <>
          {STEPS.map(([sign, name, dx, dy]) => (
            <button key={name} aria-label={name} onClick={() => view()?.pan(dx, dy)}>
              {sign}
            </button>
          ))}
          <button aria-label={say.viewSmaller} onClick={() => view()?.enlarge(0.8)}>
            −
          </button>
        </>
      ) : null}
      <button aria-label={say.viewLarger} onClick={() => view()?.enlarge(1.25)}>
        +
      </button>
      {enlarged ? <button onClick={() => view()?.refit()}>{say.fitView}</button> : null}
    </div>
  );
}
