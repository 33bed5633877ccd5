// Two versions a link offers to choose between.

import { signal } from "@preact/signals";
import * as say from "#words";

import * as beside from "./beside";
import * as reply from "./reply";
import * as session from "./session";

/** What they are called, and their files. */
export interface Offered {
  names: readonly [string, string];
  files: readonly [string, string];
}

/** The two; none where a link holds one alone. */
export const two = signal<Offered | undefined>(undefined);
/** Which of them is looked at. */
export const shown = signal<0 | 1>(0);

/** Takes what the open link holds besides what is open now. */
export function take(payload: string): void {
  const other = session.core().other_in(payload) as
    | { names: [string, string]; file: string }
    | undefined;
  forget();
  if (other === undefined) return;
  const [first, second] = other.names;
  const names = [first || say.twoFirst, second || say.twoSecond] as const;
  const files = [session.core().save_json(), other.file] as const;
  two.value = { names, files };
  beside.read(...files);
}

/** Looks at the one or the other. */
export function look(at: 0 | 1): void {
  const file = two.value?.files[at];
  if (file === undefined || at === shown.value) return;
  session.core().open_json(file);
  shown.value = at;
  session.read();
  reply.put();
}

/** Nothing is offered any more. */
export function forget(): void {
  beside.close();
  [two.value, shown.value] = [undefined, 0];
}
