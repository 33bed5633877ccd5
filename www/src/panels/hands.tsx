// Hands: an action places one hand or a pair of the same person in one go.

import type { JSX } from "preact";
import * as say from "#words";

import { act } from "../acts";
import type { Hand, Layout } from "../core";
import { Cautions } from "../parts/cautions";
import { Choice, Panel, Stepper } from "../parts/controls";
import * as session from "../session";
import * as state from "../state";
import { length } from "../units";
import { Shots, Steps } from "./exposures";
import { Someone } from "./someone";
import { Moves } from "./thing";

const ACTIONS: readonly (readonly [string, string, 1 | 2])[] = [
  ["tear", say.doTear, 2],
  ["squeeze", say.doSqueeze, 2],
  ["pour", say.doPour, 1],
  ["sprinkle", say.doSprinkle, 1],
  ["spoon", say.doSpoon, 1],
  ["hold", say.doHold, 2],
  ["reach", say.doReach, 1],
  ["rest", say.doRest, 1],
  ["cut", say.doCut, 2],
  ["pass", say.doPass, 1],
  ["place", say.doPlace, 2],
  ["lift", say.doLift, 2],
];

/** Step through the takes: all together, no hands, 1, 2, 3. */
export function Exposures(): JSX.Element | null {
  const shots = (state.layout.value?.exposures ?? []).filter((each) => each.kind === "hands");
  if (shots.length === 0) return null;
  return <Steps shots={shots.map(({ id }, place) => [id, String(place + 1)])} />;
}

/** Where the person of a hand sits or stands. */
function Place({ hand }: { hand: Hand }): JSX.Element {
  const from = session.core().comes_from(hand.id);
  const turn = state.layout.value?.frame.turn ?? 0;
  // The first step lets it come from below, the second goes on from there.
  const step = (by: -1 | 1) => act.comeFrom(hand, from === undefined ? 180 : Math.round(from / 30) * 30 + 30 * by);
  return (
    <>
      <Stepper
        name={say.comesFrom}
        value={from === undefined ? say.comesFromNowhere : session.core().clock(from + turn)}
        less={say.comesFromBack}
        more={say.comesFromOn}
        step={step}
      />
      {from === undefined ? null : (
        <div class="steps">
          <button class="word" onClick={() => act.standOrSit(hand)}>
            {session.core().stands(hand.id) ? say.seatSit : say.seatStand}
          </button>
        </div>
      )}
    </>
  );
}

/** What a hand does, which and whose it is, and what it holds. */
function Doing({ hand }: { hand: Hand }): JSX.Element {
  const { items = [], people = [] } = state.layout.value ?? {};
  const named = items.filter((item) => item.on === undefined);
  const up = length(10);
  return (
    <>
      <Choice
        name={say.does}
        options={ACTIONS.map(([action, label]) => [action, label] as const)}
        value={hand.action}
        choose={(action) => act.doElse(hand, action)}
      />
      <label class="line">
        <span class="name">{say.holds}</span>
        <select
          value={String(hand.holds ?? 0)}
          onChange={(event) => act.grip(hand, Number(event.currentTarget.value))}
        >
          <option value="0">{say.holdsNothing}</option>
          {named.map((item) => (
            <option key={item.id} value={String(item.id)}>
              {item.name}
            </option>
          ))}
        </select>
      </label>
      <Stepper
        name={say.handHeight}
        value={length(hand.height)}
        less={say.handLower({ by: up })}
        more={say.handHigher({ by: up })}
        step={(way) => act.hand(hand, { height: Math.max(0, hand.height + 10 * way) })}
      />
      <Choice
        name={say.whose}
        options={[
          ...people.map(({ id }, n) => [String(id), String.fromCharCode(65 + n)] as const),
          ["0", say.whoseNew],
        ]}
        value={String(hand.person)}
        choose={(id) => act.give(hand, Number(id))}
      />
    </>
  );
}

function Whose({ hand }: { hand: Hand }): JSX.Element {
  const shots = (state.layout.value?.exposures ?? []).filter((each) => each.kind === "hands");
  return (
    <>
      <div class="steps">
        <button class="word" onClick={() => act.flip(hand)}>
          {say.handFlip}
        </button>
        <button
          class="word"
          onClick={() => act.hand(hand, { palm: hand.palm === "up" ? "down" : "up" })}
        >
          {hand.palm === "up" ? say.palmDown : say.palmUp}
        </button>
        <button
          class="word"
          onClick={() => act.remove(hand.pair === undefined ? [hand.id] : [hand.id, hand.pair])}
        >
          {say.handAway}
        </button>
      </div>
      <Moves />
      <Doing hand={hand} />
      <Place hand={hand} />
      <Choice
        name={say.shotIn}
        options={shots.map((shot, place) => [String(shot.id), String(place + 1)] as const)}
        value={String(hand.exposure)}
        choose={(id) => act.exposure(hand, Number(id))}
      />
    </>
  );
}

/** What is set for the chosen hand, wherever it was chosen. */
export function OneHand({ hand }: { hand: Hand }): JSX.Element {
  const person = state.layout.value?.people?.find((each) => each.id === hand.person);
  const name = state.things.value.find((thing) => thing.id === hand.id)?.name ?? say.hands;
  return (
    <section class="panel chosen-strip" aria-label={name}>
      <div class="line">
        <h2>{name}</h2>
        <button class="word" onClick={() => session.choose(undefined)}>
          {say.done}
        </button>
      </div>
      <Whose hand={hand} />
      {person === undefined ? null : <Someone person={person} />}
    </section>
  );
}

export function HandsPanel({ layout }: { layout: Layout }): JSX.Element {
  const chosen = state.chosenHand.value;
  const over = layout.items.find((item) => item.id === session.core().root(state.chosen.value ?? 0));
  const hero = layout.items.find((item) => item.role === "hero") ?? layout.items[0];
  const target = over ?? hero;
  const hands = state.things.value.filter((thing) =>
    layout.hands?.some((hand) => hand.id === thing.id),
  );
  if (state.workedIn.value !== 0) {
    return (
      <Panel title={say.hands}>
        {chosen === undefined ? null : <OneHand hand={chosen} />}
        <Shots layout={layout} />
      </Panel>
    );
  }
  return (
    <Panel title={say.hands}>
      <Shots layout={layout} />
      {chosen === undefined ? null : <OneHand hand={chosen} />}
      {target === undefined ? null : (
        <div class="field" role="group" aria-label={say.handsSet}>
          <span>{say.handsAt({ thing: target.name })}</span>
          <div class="steps">
            {ACTIONS.map(([action, label, count]) => (
              <button
                key={action}
                class="word"
                onClick={() =>
                  session.addHands({ action, hands: count, at: target.id })
                }
              >
                {label}
              </button>
            ))}
          </div>
        </div>
      )}
      {hands.length > 0 ? (
        <ul class="things" aria-label={say.handsInPicture}>
          {hands.map((thing) => (
            <li key={thing.id}>
              <button
                aria-pressed={thing.id === chosen?.id}
                onClick={() => session.choose(thing.id)}
              >
                <b>{thing.number}</b>
                <span>{thing.name}</span>
                <small>{thing.where}</small>
              </button>
            </li>
          ))}
        </ul>
      ) : (
        <p class="quiet">{target === undefined ? say.handsNoDish : say.handsNone}</p>
      )}
      <p class="caution">{say.cautionHands}</p>
      <Cautions of={["hands"]} />
    </Panel>
  );
}
