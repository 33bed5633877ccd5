// What is done to several things at once: repeated, lined up, spaced, swapped.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import * as say from "#words";

import type { Id, Item, Linen } from "../core";
import { Choice, Stepper } from "../parts/controls";
import * as session from "../session";
import * as state from "../state";
import * as units from "../units";

/** Something of the catalogue. */
export interface Found {
  prop: string;
  name: string;
  size: string;
}

/** What is done to one thing, or to all that is picked. */
export function Arrange({ ids, title }: { ids: readonly Id[]; title: string }): JSX.Element {
  const these = Uint16Array.from(ids);
  return (
    <details>
      <summary>{title}</summary>
      <div class="panel">
        <Order these={these} />
        <Along these={these} />
        <Round these={these} />
        <Swap these={these} />
      </div>
    </details>
  );
}

interface Props {
  these: Uint16Array;
}

const LINES = [
  ["level", say.alignLevel],
  ["upright", say.alignUpright],
  ["runner", say.alignRunner],
] as const;

function Order({ these }: Props): JSX.Element {
  // One thing has nothing to be in line with but the runner.
  const lines = LINES.filter(([line]) => these.length > 1 || line === "runner");
  return (
    <div class="steps" role="group" aria-label={say.arrangeOrder}>
      {lines.map(([line, label]) => (
        <button
          key={line}
          class="word"
          onClick={() => session.act(() => session.core().align(these, line))}
        >
          {label}
        </button>
      ))}
      {these.length < 3 ? null : (
        <button
          class="word"
          onClick={() => session.act(() => session.core().equal_gaps(these))}
        >
          {say.equalGaps}
        </button>
      )}
    </div>
  );
}

function Along({ these }: Props): JSX.Element {
  const copies = useSignal(2);
  const gap = useSignal(40);
  const way = useSignal<"90" | "180" | "270" | "0">("90");
  const by = units.length(10);
  return (
    <>
      <Stepper
        name={say.copies}
        value={String(copies.value)}
        less={say.copiesFewer}
        more={say.copiesMore}
        step={(on) => (copies.value = Math.max(1, Math.min(20, copies.value + on)))}
      />
      <Stepper
        name={say.copiesGap}
        value={units.length(gap.value)}
        less={say.narrower({ by })}
        more={say.wider({ by })}
        step={(on) => (gap.value = Math.max(0, gap.value + 10 * on))}
      />
      <Choice
        name={say.copiesTowards}
        options={[
          ["90", say.toTheRight],
          ["180", say.towardsNear],
          ["270", say.toTheLeft],
          ["0", say.towardsFar],
        ]}
        value={way.value}
        choose={(to) => (way.value = to)}
      />
      <button
        class="word"
        onClick={() =>
          session.act(() =>
            session.core().repeat_along(these, copies.value, gap.value, Number(way.value)),
          )
        }
      >
        {say.repeatAlong({ count: copies.value })}
      </button>
    </>
  );
}

function Round({ these }: Props): JSX.Element {
  const count = useSignal(6);
  const sweep = useSignal<"360" | "180" | "90">("360");
  return (
    <>
      <Stepper
        name={say.roundCount}
        value={String(count.value)}
        less={say.copiesFewer}
        more={say.copiesMore}
        step={(on) => (count.value = Math.max(2, Math.min(20, count.value + on)))}
      />
      <Choice
        name={say.roundSweep}
        options={[
          ["360", say.roundFull],
          ["180", say.roundHalf],
          ["90", say.roundQuarter],
        ]}
        value={sweep.value}
        choose={(part) => (sweep.value = part)}
      />
      <button
        class="word"
        onClick={() =>
          session.act(() =>
            session.core().repeat_round(these, count.value, Number(sweep.value)),
          )
        }
      >
        {say.repeatRound}
      </button>
    </>
  );
}

function Swap({ these }: Props): JSX.Element | null {
  const into = useSignal("");
  const items = (state.layout.value?.items ?? []).filter(({ id }) => these.includes(id));
  const [first] = items;
  if (first === undefined || items.length < these.length) return null;
  // What is of several sorts has no one thing to be swapped for.
  if (items.some((item) => item.prop !== first.prop)) return null;
  const found = session.core().swaps(first.id) as Found[];
  if (found.length === 0) return null;
  const prop = found.some((each) => each.prop === into.value) ? into.value : found[0]?.prop ?? "";
  const swap = (all: boolean): void => {
    session.act(() => session.core().swap(these, prop, all));
  };
  return (
    <>
      <label class="field">
        <span>{say.swapFor}</span>
        <select value={prop} onChange={(event) => (into.value = event.currentTarget.value)}>
          {found.map((each) => (
            <option key={each.prop} value={each.prop}>
              {each.name} · {each.size}
            </option>
          ))}
        </select>
      </label>
      <div class="steps">
        <button class="word" onClick={() => swap(false)}>
          {these.length > 1 ? say.swapThese : say.swapThis}
        </button>
        <button class="word" onClick={() => swap(true)}>
          {say.swapAll}
        </button>
      </div>
    </>
  );
}

/** Lays the chosen thing on what lies under it, or takes it off. */
export function Lying({ item }: { item: Item }): JSX.Element | null {
  const core = session.core();
  const under = core.lies_over(item.id);
  const name = state.things.value.find(({ id }) => id === under)?.name;
  return (
    <>
      {name === undefined ? null : (
        <button class="word" onClick={() => session.act(() => core.put_on(item.id, under))}>
          {say.layOn({ thing: name })}
        </button>
      )}
      {item.on === undefined ? null : (
        <button class="word" onClick={() => session.act(() => core.put_on(item.id, 0))}>
          {say.takeOff}
        </button>
      )}
    </>
  );
}

/** Lays cloth over what its edge crosses, or under everything again. */
export function Over({ linen }: { linen: Linen }): JSX.Element | null {
  const core = session.core();
  const crossed = core.crossed(linen.id);
  const over = linen.over ?? [];
  const fresh = crossed.filter((id) => !over.includes(id));
  return (
    <>
      {fresh.length === 0 ? null : (
        <button class="word" onClick={() => session.act(() => core.lay_over(linen.id, fresh))}>
          {say.layOver({ count: fresh.length })}
        </button>
      )}
      {over.length === 0 ? null : (
        <button
          class="word"
          onClick={() => session.act(() => core.lay_under(linen.id, new Uint16Array()))}
        >
          {say.layUnder}
        </button>
      )}
    </>
  );
}

/** Brings the chosen thing, with its group, under the cloth it stands on, or out from under it. */
export function Tucked({ item }: { item: Item }): JSX.Element | null {
  const core = session.core();
  const name = (id: Id): string =>
    state.layout.value?.linens.find((linen) => linen.id === id)?.name ?? "";
  const along = (): Uint16Array => {
    const own = item.group !== undefined && !state.inside.value;
    const all = (state.layout.value?.items ?? []).filter(
      (other) => other.id === item.id || (own && other.group === item.group && other.on === undefined),
    );
    return Uint16Array.from(all.map(({ id }) => id));
  };
  const over = core.cloth_over(item.id);
  const below = core.cloth_below(item.id);
  if (over !== 0) {
    return (
      <button class="word" onClick={() => session.act(() => core.lay_under(over, along()))}>
        {say.tuckOut({ thing: name(over) })}
      </button>
    );
  }
  if (below === 0) return null;
  return (
    <button class="word" onClick={() => session.act(() => core.lay_over(below, along()))}>
      {say.tuckUnder({ thing: name(below) })}
    </button>
  );
}
