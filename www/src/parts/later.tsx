// Parts of a long place that come a few at a time once its first are there, so
// that they do not hold up what a touch does meanwhile.

import { useSignal } from "@preact/signals";
import type { ComponentChildren, JSX } from "preact";
import { useEffect } from "preact/hooks";

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

export function Later({ children }: { children: ComponentChildren }): JSX.Element | null {
  const here = useSignal(false);
  useEffect(() => {
    const come = (): void => void (here.value = true);
    waiting.add(come);
    if (waiting.size === 1) painted(next);
    return () => waiting.delete(come);
  }, []);
  return here.value ? <>{children}</> : null;
}
