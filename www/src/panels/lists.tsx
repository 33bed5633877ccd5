// The prop pull list and the food list: what is changed in them changes the
// picture, and what changes in the picture changes them.

import type { ComponentChildren, JSX } from "preact";
import { useEffect } from "preact/hooks";
import * as say from "#words";

import type { Layout } from "../core";
import { change, isTicked, tick, type Dish, type Pull, type Source, type Tick } from "../listed";
import { Choice, Field, Stepper } from "../parts/controls";
import * as mine from "../mine";
import * as session from "../session";
import { Holds } from "./order";

const SOURCES: readonly (readonly [Source, string])[] = [
  ["own", say.listsOwn],
  ["hire", say.listsHire],
  ["buy", say.listsBuy],
  ["borrow", say.listsBorrow],
  ["client", say.listsClient],
];
const TICKS: readonly (readonly [Tick, string])[] = [
  ["pulled", say.listsPulled],
  ["out", say.listsOut],
  ["back", say.listsBack],
];

type Row = Pick<Pull, "ids" | "numbers" | "name" | "count" | "spare" | "source" | "shelf">;

/** What both lists say of a row, opened by a tap on its name. */
function Line({ row, children }: { row: Row; children: ComponentChildren }): JSX.Element {
  const thing = row.name;
  const { ids, count, spare } = row;
  return (
    <li>
      <details>
        <summary>
          <b>{say.listsRow({ numbers: row.numbers, name: row.name })}</b>
          <span class="sans">× {count}</span>
        </summary>
        <div class="panel">
          {children}
          <Stepper
            name={say.listsCount}
            value={String(count)}
            less={say.listsFewer({ thing })}
            more={say.listsMore({ thing })}
            step={(by) => change.count(ids, count + by)}
          />
          <Stepper
            name={say.listsSpare}
            value={String(spare)}
            less={say.listsSpareLess({ thing })}
            more={say.listsSpareMore({ thing })}
            step={(by) => change.spare(ids, spare + by)}
          />
          <Choice
            name={say.listsSource}
            options={SOURCES}
            value={row.source ?? undefined}
            choose={(source) => change.source(ids, source === row.source ? "" : source)}
          />
          <Field
            name={say.listsShelf}
            value={row.shelf}
            take={(shelf) => change.shelf(ids, shelf)}
          />
        </div>
      </details>
      <div class="ticks" role="group" aria-label={say.listsTicks({ thing })}>
        {TICKS.map(([which, label]) => (
          <label key={which}>
            <input
              type="checkbox"
              checked={isTicked(ids, which)}
              onChange={(event) => tick(ids, which, event.currentTarget.checked)}
            />
            {label}
          </label>
        ))}
      </div>
    </li>
  );
}

/** A way to say that one owns what a row has, where the shelf lacks some of it. */
function OnShelf({ row }: { row: Pull }): JSX.Element | null {
  const [first] = row.ids;
  if (first === undefined || (row.have !== "" && row.lacks === 0)) return null;
  const count = row.have === "" ? row.count : row.lacks;
  return (
    <button class="word" onClick={() => void mine.keep(first, count)}>
      {say.listsKeep({ count })}
    </button>
  );
}

/** The rows keep their keys while their counts change. */
const key = ({ ids }: Row): number => ids[0] ?? 0;

export function Lists({ layout }: { layout: Layout }): JSX.Element {
  const props = mine.knowing().pull_list() as Pull[];
  useEffect(() => void mine.list(), []);
  const dishes = session.core().food_list() as Dish[];
  return (
    <>
      <details class="panel">
        <summary>{say.listsPull}</summary>
        <p class="quiet">{say.listsPullWhat({ count: props.length })}</p>
        <p class="quiet">{say.listsKeptHere}</p>
        <ul class="list listed" aria-label={say.listsPull}>
          {props.map((row) => (
            <Line key={key(row)} row={row}>
              <p>{row.size}</p>
              <p>{row.looks}</p>
              <p>{row.used}</p>
              {row.have === "" ? null : <p>{say.listsOwned({ what: row.have })}</p>}
              <OnShelf row={row} />
            </Line>
          ))}
        </ul>
      </details>
      <details class="panel">
        <summary>{say.listsFood}</summary>
        <p class="quiet">{say.listsFoodWhat({ count: dishes.length })}</p>
        <ul class="list listed" aria-label={say.listsFood}>
          {dishes.map((row) => {
            const item = layout.items.find(({ id }) => id === row.ids[0]);
            return (
              <Line key={key(row)} row={row}>
                {row.by === "" ? null : <p>{say.listsBy({ from: row.from, by: row.by })}</p>}
                <p>{say.listsAllergens({ list: row.allergens })}</p>
                {row.refresh === "" ? null : <p>{row.refresh}</p>}
                {item === undefined ? null : <Holds item={item} all={row.ids} />}
              </Line>
            );
          })}
        </ul>
      </details>
    </>
  );
}
