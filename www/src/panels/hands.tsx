// Hands: an action places one hand or a pair of the same person in one go.

import type { JSX } from "preact";
import * as say from "#words";

import { act } from "../acts";
import type { Hand, Layout, Person } from "../core";
import { Cautions } from "../parts/cautions";
import { Choice, Panel, Stepper, Tones } from "../parts/controls";
import * as session from "../session";
import * as state from "../state";
import { length } from "../state";
import { Shots } from "./exposures";

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
const SKINS = [
  ["#f3d9c4", say.skinVeryFair],
  ["#e3b998", say.skinFair],
  ["#c08f6f", say.skinMedium],
  ["#9a6a4b", say.skinBrown],
  ["#6f4a35", say.skinDeep],
  ["#47301f", say.skinVeryDeep],
] as const;
const SLEEVES = [
  ["#191614", say.sleeveBlack],
  ["#4b4f57", say.sleeveCharcoal],
  ["#909aa0", say.sleeveGrey],
  ["#e9e2d2", say.sleeveCream],
  ["#5f778a", say.sleeveBlue],
  ["#7a4b36", say.sleeveRust],
] as const;

/** Step through the takes: all together, no hands, 1, 2, 3. */
export function Exposures(): JSX.Element | null {
  const shots = (state.layout.value?.exposures ?? []).filter((each) => each.kind === "hands");
  if (shots.length === 0) return null;
  const steps: [number, string][] = [
    [-2, say.allTogether],
    [-1, say.noHands],
    ...shots.map(({ id }, place): [number, string] => [id, String(place + 1)]),
  ];
  return (
    <div class="steps" role="group" aria-label={say.exposureShown}>
      {steps.map(([value, label]) => (
        <button
          key={value}
          aria-pressed={state.exposure.value === value}
          onClick={() => (state.exposure.value = value)}
        >
          {label}
        </button>
      ))}
    </div>
  );
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

/** How someone is built, what they wear, and whether they agreed. */
function Body({ person }: { person: Person }): JSX.Element {
  const tall = person.stature;
  const by = length(50);
  return (
    <>
      <Stepper
        name={say.stature}
        value={tall === undefined ? say.statureUsual : length(tall)}
        less={say.statureLess({ by })}
        more={say.statureMore({ by })}
        step={(way) =>
          act.person(person, { stature: (tall ?? session.core().usual_stature()) + 50 * way })
        }
      />
      <Choice
        name={say.ring}
        options={[
          ["none", say.ringNone],
          ["left", say.ringLeft],
          ["right", say.ringRight],
        ]}
        value={person.ring ?? "none"}
        choose={(ring) => act.person(person, { ring: ring === "none" ? null : ring })}
      />
      <label class="check">
        <input
          type="checkbox"
          checked={person.released ?? false}
          onChange={(event) => act.person(person, { released: event.currentTarget.checked })}
        />
        <span>{say.released}</span>
      </label>
    </>
  );
}

function Whose({ hand, person }: { hand: Hand; person: Person }): JSX.Element {
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
      <Place hand={hand} />
      <Choice
        name={say.sleeve}
        options={[
          ["bare", say.sleeveBare],
          ["rolled", say.sleeveRolled],
          ["long", say.sleeveLong],
        ]}
        value={person.sleeve.length}
        choose={(length) => act.person(person, { sleeve: { ...person.sleeve, length } })}
      />
      <Tones
        name={say.sleeveColour}
        tones={SLEEVES}
        value={person.sleeve.colour}
        choose={(colour) => act.person(person, { sleeve: { ...person.sleeve, colour } })}
      />
      <Tones
        name={say.skin}
        tones={SKINS}
        value={person.skin}
        choose={(skin) => act.person(person, { skin })}
      />
      <Body person={person} />
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
      {person === undefined ? null : <Whose hand={hand} person={person} />}
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
