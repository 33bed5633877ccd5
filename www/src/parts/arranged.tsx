// Arrangements to choose from, drawn small: of a table that is wished for, or of
// the open one.

import type { ReadonlySignal } from "@preact/signals";
import { useComputed, useSignal } from "@preact/signals";
import type { JSX } from "preact";
import { useEffect } from "preact/hooks";
import * as say from "#words";

import type * as asked from "../asked";
import * as readings from "../readings";
import * as session from "../session";
import * as state from "../state";
import { Panel } from "./controls";
import { Small } from "./small";

/** An arrangement, and whether it is one of the table as it is now. */
type One = asked.Arranged & { fresh: boolean };

interface Choosing {
  all: ReadonlySignal<One[]>;
  /** What is chosen, the first there is room for until another is. */
  chosen: ReadonlySignal<One | undefined>;
  choose(name: string): void;
}

/** Arrangements as they come in, each in the place of the one before it. */
function useFound(): { all: ReadonlySignal<One[]>; find(wish: unknown): void } {
  const all = useSignal<One[]>([]);
  const find = (wish: unknown): void => {
    all.value = all.value.map((one) => ({ ...one, fresh: false }));
    let next = 0;
    readings.arrange(wish, (one) => {
      const now = [...all.value];
      now[next] = { ...one, fresh: true };
      next += 1;
      all.value = now;
    });
  };
  return { all, find };
}

/** Arrangements of the table wished for; of none without a wish. */
export function arrangedBy(wish: unknown): Choosing {
  const { all, find } = useFound();
  const name = useSignal("");
  useEffect(() => {
    if (wish !== undefined) find(wish);
  }, [JSON.stringify(wish)]);
  const chosen = useComputed(() => {
    const fit = all.value.filter((one) => one.fresh && one.file !== null);
    return fit.find((one) => one.name === name.value) ?? fit[0];
  });
  return { all, chosen, choose: (of) => (name.value = of) };
}

/** The arrangements side by side. */
export function Arranged({ all, chosen, choose }: Choosing): JSX.Element {
  return (
    <div class="field" role="group" aria-label={say.arrangement}>
      <span>{say.arrangement}</span>
      <ul class="starters three">
        {all.value.map((one) => (
          <li key={one.name} class={one.fresh ? "" : "stale"}>
            {one.file === null ? (
              <p class="quiet">{say.arrangedNoRoom({ arrangement: one.name })}</p>
            ) : (
              <button aria-pressed={chosen.value?.name === one.name} onClick={() => choose(one.name)}>
                <Small of={one.file} shape="table" draw={(core, svg, of) => core.draw_file(svg, of, true)} />
                <span>{one.name}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** The open table another way. */
export function Anew(): JSX.Element {
  const { all, find } = useFound();
  const base = useSignal("");
  const now = useSignal("");
  const layout = state.layout.value;
  useEffect(() => {
    now.value = session.core().save_json();
    const known = now.value === base.value || all.value.some(({ file }) => file === now.value);
    if (known) return;
    base.value = now.value;
    find(undefined);
  }, [layout]);
  const chosen = useComputed(() => all.value.find(({ file }) => file === now.value));
  const choose = (name: string): void => {
    const file = all.value.find((one) => one.name === name && one.fresh)?.file;
    if (!file || file === now.value) return;
    // One arrangement after another is one step: the last one is taken back first.
    if (now.value !== base.value) session.undo();
    session.become(say.arrangedAs({ arrangement: name }), JSON.parse(file));
  };
  return (
    <Panel title={say.arrangeAnew}>
      <Arranged all={all} chosen={chosen} choose={choose} />
    </Panel>
  );
}
