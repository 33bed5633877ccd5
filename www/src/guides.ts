// Mask guides on the page: made in a worker of their own, which is ended when
// nobody waits for them any more.

import { signal } from "@preact/signals";
import * as say from "#words";

import type { GuideAnswer } from "./asked";
import type { Layout } from "./core";
import * as session from "./session";
import * as spare from "./spare";
import * as state from "./state";

/** How far they are, 0 to 1; nothing when none are being made. */
export const making = signal<number | undefined>(undefined);
/** What was made, and of which layout. */
export const made = signal<{ zip: Blob; of: Layout | undefined } | undefined>(undefined);

let end: (() => void) | undefined;

/** Makes the guides of the open layout. */
export function make(): void {
  stop();
  const of = state.layout.value;
  [making.value, made.value] = [0, undefined];
  const heard = (data: GuideAnswer): void => {
    making.value = data.done;
    if (data.fault !== undefined) fell(data.fault);
    if (data.zip === undefined) return;
    made.value = { zip: data.zip, of };
    stop();
  };
  end = spare.ask({ ask: "guides", file: session.core().save_json() }, heard, fell);
}

function fell(why: string): void {
  stop();
  state.fault.value = say.guidesNotMade({ why });
}

/** Gives up what is being made. */
export function stop(): void {
  end?.();
  [end, making.value] = [undefined, undefined];
}
