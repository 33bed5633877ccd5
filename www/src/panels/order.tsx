// The running order: when each exposure is shot, by whom, from where, and how
// long the food lasts.

import type { JSX } from "preact";
import * as say from "#words";

import { act } from "../acts";
import type { Hand, Id, Item, Layout } from "../core";
import { Field, Stepper, Tape } from "../parts/controls";
import * as session from "../session";
import * as state from "../state";
import { doing } from "./client";

interface Turn {
  exposure: number;
  name: string;
  from: string;
  to: string;
  who: string[];
  props: string[];
  food: string[];
  late: boolean;
  solo: string[];
}
interface Lasts {
  item: number;
  name: string;
  hold?: number | null;
  told: boolean;
  from: string;
  last: string;
  late: boolean;
}
interface Paper {
  turns: Turn[];
  food: Lasts[];
  length: string;
}

/** A longer time is counted in larger steps. */
const stepOf = (minutes: number): number => (minutes >= 60 ? 15 : minutes >= 20 ? 5 : 1);
const LONGEST = 1440;

/** What the hands of an exposure do, one line for each person and action. */
export function does(layout: Layout, exposure: number): string[] {
  const lines = new Map<string, Hand[]>();
  for (const hand of layout.hands ?? []) {
    if (hand.exposure !== exposure) continue;
    const key = `${hand.person} ${hand.action}`;
    lines.set(key, [...(lines.get(key) ?? []), hand]);
  }
  return [...lines.values()].map((hands) => doing(layout, hands));
}

/** The running order of what is open. */
export const running = (): Paper => session.core().running_order() as Paper;

/** The exposures one after another. */
export function Turns({ layout, paper }: { layout: Layout; paper: Paper }): JSX.Element {
  return (
    <>
      <ol class="order">
        {paper.turns.map((turn) => (
          <li key={turn.exposure}>
            <p>
              <b class="sans">
                {turn.from}–{turn.to}
              </b>{" "}
              <b>{turn.name}</b>
            </p>
            {[...turn.who, ...does(layout, turn.exposure), ...turn.props, ...turn.solo].map((line) => (
              <p key={line}>{line}</p>
            ))}
            {turn.food.length === 0 ? null : (
              <p class={turn.late ? "late" : undefined}>
                {turn.food.join("; ")}
                {turn.late ? <b> ({say.runningOrderLate})</b> : null}
              </p>
            )}
          </li>
        ))}
      </ol>
      <p class="quiet">{say.runningOrderLength({ time: paper.length })}</p>
    </>
  );
}

/** How long a food holds, and what stands in for it. */
export function Holds({ item, all }: { item: Item; all?: Id[] }): JSX.Element {
  const minutes = session.core().hold_of(item.id);
  const told = item.hold_minutes !== undefined;
  const thing = item.name;
  const counted = (told ? say.holdsMinutes : say.holdsUsual)({ minutes: String(minutes) });
  const value = minutes === 0 ? say.holdsHours : counted;
  const step = (way: -1 | 1): void => {
    const by = stepOf(way < 0 ? minutes - 1 : minutes);
    // What keeps for hours begins at one.
    const to = minutes === 0 ? 60 : minutes + way * by;
    act.hold(item, Math.min(LONGEST, Math.max(1, to)), all);
  };
  return (
    <>
      <Stepper
        name={say.holdsFor}
        value={value}
        less={say.holdsLess({ thing })}
        more={say.holdsMore({ thing })}
        step={step}
      />
      {told ? (
        <button class="word" onClick={() => act.hold(item, undefined, all)}>
          {say.holdsAsUsual}
        </button>
      ) : null}
      <Field
        name={say.standIn}
        value={item.stand_in ?? ""}
        take={(name) => act.standIn(item, name, all)}
      />
    </>
  );
}

/** What would be shot better in another order. */
function Better(): JSX.Element {
  const keys = ["timing:hold", "exposures:order", "timing:alone", "timing:eat"];
  const found = (state.report.value?.findings ?? []).filter(
    ({ key, state: is }) => keys.includes(key) && (is === "look-again" || is === "wont-work"),
  );
  return (
    <>
      {found.map(({ key, sentence, remedy }) => (
        <div key={key} class="better">
          <p>{sentence}</p>
          {remedy ? (
            <Tape act={remedy.act} predicted={remedy.predicted} onClick={() => session.remedy(key)} />
          ) : null}
        </div>
      ))}
    </>
  );
}

export function OrderPart({ layout }: { layout: Layout }): JSX.Element {
  const paper = running();
  const lasting = paper.food.filter(({ hold }) => hold != null);
  return (
    <section class="panel" aria-label={say.runningOrder}>
      <h3>{say.runningOrder}</h3>
      {paper.turns.length === 0 ? (
        <p class="quiet">{say.runningOrderNone}</p>
      ) : (
        <>
          <Better />
          <Turns layout={layout} paper={paper} />
          {lasting.length === 0 ? null : (
            <details>
              <summary>{say.runningOrderFood}</summary>
              <div class="panel">
                {lasting.map((food) => {
                  const item = layout.items.find(({ id }) => id === food.item);
                  return item === undefined ? null : (
                    <section key={food.item} aria-label={food.name}>
                      <h4>{food.name}</h4>
                      <p>{(food.late ? say.onSetLate : say.onSet)(food)}</p>
                      <Holds item={item} />
                    </section>
                  );
                })}
              </div>
            </details>
          )}
          <button class="word" onClick={() => print()}>
            {say.runningOrderPrint}
          </button>
        </>
      )}
    </section>
  );
}
