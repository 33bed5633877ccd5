// Hands: an action places one hand or a pair of the same person in one go.

import type { JSX } from "preact";

import { act } from "../acts";
import type { Hand, Layout, Person } from "../core";
import { Choice, Panel, Tones } from "../parts/controls";
import * as session from "../session";
import * as state from "../state";

const ACTIONS: readonly (readonly [string, string, 1 | 2])[] = [
  ["tear", "tear bread", 2],
  ["squeeze", "squeeze lemon", 2],
  ["pour", "pour", 1],
  ["sprinkle", "sprinkle", 1],
  ["spoon", "spoon out", 1],
  ["hold", "hold a dish", 2],
  ["reach", "reach", 1],
  ["rest", "rest", 1],
];
const SKINS = [
  ["#f3d9c4", "Very fair skin"],
  ["#e3b998", "Fair skin"],
  ["#c08f6f", "Medium skin"],
  ["#9a6a4b", "Brown skin"],
  ["#6f4a35", "Deep brown skin"],
  ["#47301f", "Very deep skin"],
] as const;
const SLEEVES = [
  ["#191614", "Black sleeve"],
  ["#4b4f57", "Charcoal sleeve"],
  ["#909aa0", "Grey sleeve"],
  ["#e9e2d2", "Cream sleeve"],
  ["#5f778a", "Blue sleeve"],
  ["#7a4b36", "Rust sleeve"],
] as const;

/** Step through the takes: all together, no hands, 1, 2, 3. */
export function Exposures(): JSX.Element | null {
  const shots = (state.layout.value?.exposures ?? []).filter((each) => each.kind === "hands");
  if (shots.length === 0) return null;
  const steps: [number, string][] = [
    [-2, "all together"],
    [-1, "no hands"],
    ...shots.map((_, place): [number, string] => [place, String(place + 1)]),
  ];
  return (
    <div class="steps" role="group" aria-label="Exposure shown">
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

function OneHand({ hand, person }: { hand: Hand; person: Person }): JSX.Element {
  const shots = (state.layout.value?.exposures ?? []).filter((each) => each.kind === "hands");
  return (
    <>
      <div class="steps">
        <button class="word" onClick={() => act.flip(hand)}>
          Flip left and right
        </button>
        <button
          class="word"
          onClick={() => act.hand(hand, { palm: hand.palm === "up" ? "down" : "up" })}
        >
          {hand.palm === "up" ? "Turn the palm down" : "Turn the palm up"}
        </button>
        <button
          class="word"
          onClick={() => act.remove(hand.pair === undefined ? [hand.id] : [hand.id, hand.pair])}
        >
          Take away
        </button>
      </div>
      <Choice
        name="Sleeve"
        options={[
          ["bare", "bare"],
          ["rolled", "rolled"],
          ["long", "long"],
        ]}
        value={person.sleeve.length}
        choose={(length) => act.person(person, { sleeve: { ...person.sleeve, length } })}
      />
      <Tones
        name="Sleeve colour"
        tones={SLEEVES}
        value={person.sleeve.colour}
        choose={(colour) => act.person(person, { sleeve: { ...person.sleeve, colour } })}
      />
      <Tones
        name="Skin"
        tones={SKINS}
        value={person.skin}
        choose={(skin) => act.person(person, { skin })}
      />
      <Choice
        name="Shot in exposure"
        options={shots.map((shot, place) => [String(shot.id), String(place + 1)] as const)}
        value={String(hand.exposure)}
        choose={(id) => act.exposure(hand, Number(id))}
      />
    </>
  );
}

export function HandsPanel({ layout }: { layout: Layout }): JSX.Element {
  const chosen = state.chosenHand.value;
  const person = layout.people?.find((each) => each.id === chosen?.person);
  const over = state.chosenItem.value;
  const hero = layout.items.find((item) => item.role === "hero") ?? layout.items[0];
  const target = over ?? hero;
  const hands = state.things.value.filter((thing) =>
    layout.hands?.some((hand) => hand.id === thing.id),
  );
  return (
    <Panel title="Hands">
      <Exposures />
      {target === undefined ? null : (
        <div class="field" role="group" aria-label="Set hands to an action">
          <span>At the {target.name}, hands…</span>
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
        <ul class="things" aria-label="Hands in the picture">
          {hands.map((thing) => (
            <li key={thing.id}>
              <button
                aria-pressed={thing.id === chosen?.id}
                onClick={() => session.choose(thing.id)}
              >
                <b>{thing.number}</b>
                <span>{thing.name}</span>
                <span />
                <small>{thing.where}</small>
              </button>
            </li>
          ))}
        </ul>
      ) : (
        <p class="quiet">No hands yet. Choose a dish on the picture, then what hands do there.</p>
      )}
      {chosen !== undefined && person !== undefined ? (
        <OneHand hand={chosen} person={person} />
      ) : null}
      <p class="caution">
        Hands near a flame, hot pots or knives: stand-ins and cold dishes where you can; local rules
        and a qualified person decide.
      </p>
    </Panel>
  );
}
