// Things put on the table: where one looks, and chosen, so that the next touch
// moves them.

import * as picks from "./picks";
import * as seen from "./seen";
import * as session from "./session";
import * as state from "./state";

/** Puts down what `run` adds, and chooses it. */
function down(run: (x: number, y: number) => unknown): boolean {
  const id = state.layout.value?.next_id;
  if (!session.act(() => run(...seen.middle()))) return false;
  session.choose(id);
  return true;
}

/** A thing of the catalogue; food comes into the dish that is chosen. */
export function thing(prop: string): boolean {
  const onto = state.chosen.value ?? 0;
  if (!down((x, y) => session.core().add(prop, x, y, onto))) return false;
  picks.added(prop);
  return true;
}

/** A thing of one's own, as it was kept. */
export const kept = (file: string): boolean => down((x, y) => session.core().add_kept(file, x, y));

/** A thing of one's own by outline, size and colours. */
export const own = (wish: object): boolean =>
  down((x, y) => session.core().add_own({ ...wish, at: [x, y] }));
