// Parts of a long place that come one by one once its first are there, so that
// none of them holds up what a touch does meanwhile.

import { useSignal } from "@preact/signals";
import type { ComponentChildren, JSX } from "preact";
import { useEffect } from "preact/hooks";

import { painted } from "../after";

/** What waits to come, in the order it was met. */
const waiting = new Set<() => void>();

function next(): void {
  for (const come of waiting) {
    waiting.delete(come);
    come();
    if (waiting.size > 0) painted(next);
    return;
  }
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
