// Parts of a long place that come a few at a time once its first are there, so
// that they do not hold up what a touch does meanwhile.

import { useSignal } from "@preact/signals";
import { toChildArray } from "preact";
import type { ComponentChild, ComponentChildren, JSX } from "preact";
import { useEffect, useLayoutEffect, useRef } from "preact/hooks";

import { painted } from "../after";

/** So many come in one frame: fewer take longer in all, more hold up a touch. */
const AT_ONCE = 4;

/** What waits to come, in the order it was met. */
const waiting = new Set<() => void>();

function next(): void {
  for (const come of [...waiting].slice(0, AT_ONCE)) {
    waiting.delete(come);
    come();
  }
  if (waiting.size > 0) painted(next);
}

/** Whether the next long place is gone to: otherwise it is come back to, where one was. */
let gone = false;

/** Says that the next long place is gone to. */
export const going = (): void => void (gone = true);

function One({ now, children }: { now: boolean; children: ComponentChild }): JSX.Element | null {
  const here = useSignal(now);
  useEffect(() => {
    if (now) return undefined;
    const come = (): void => void (here.value = true);
    waiting.add(come);
    if (waiting.size === 1) painted(next);
    return () => waiting.delete(come);
  }, []);
  return here.value ? <>{children}</> : null;
}

/** Has its parts come, or there at once where the place is come back to. */
export function Later({ children }: { children: ComponentChildren }): JSX.Element {
  const back = useRef(!gone).current;
  useLayoutEffect(() => void (gone = false), []);
  return (
    <>
      {toChildArray(children).map((part, n) => (
        <One key={n} now={back}>
          {part}
        </One>
      ))}
    </>
  );
}
