// The exposures: each shown alone as the table stands in it, what it takes, and
// how things are in it.

import type { JSX } from "preact";
import * as say from "#words";

import { act } from "../acts";
import type { Exposure, How, Id, Item, Layout } from "../core";
import { Choice, Stepper } from "../parts/controls";
import * as session from "../session";
import * as state from "../state";
import { Moves } from "./thing";

const KINDS: readonly (readonly [Exposure["kind"], string])[] = [
  ["clean", say.kindClean],
  ["hands", say.kindHands],
  ["card", say.kindCard],
  ["empty", say.kindEmpty],
  ["steam", say.kindSteam],
  ["no-glare", say.kindNoGlare],
  ["insurance", say.kindInsurance],
];
const STATES = {
  "as-set": say.stateAsSet,
  absent: say.stateAbsent,
  moved: say.stateMoved,
  changed: say.stateChanged,
} as const;

/** What an exposure is called where there is little room. */
function called(all: readonly Exposure[], { id, kind }: Exposure): string {
  const alike = all.filter((each) => each.kind === kind);
  const number = String(alike.findIndex((each) => each.id === id) + 1);
  if (kind === "hands") return number;
  const name = KINDS.find(([each]) => each === kind)?.[1] ?? "";
  return alike.length === 1 ? name : say.kindNumbered({ kind: name, number });
}

/** Steps through what is shown: all together, no hands, and these exposures. */
export function Steps({ shots }: { shots: readonly (readonly [number, string])[] }): JSX.Element {
  return (
    <div class="steps" role="group" aria-label={say.exposureShown}>
      {([[-2, say.allTogether], [-1, say.noHands], ...shots] as const).map(([value, label]) => (
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

/** Adds an exposure of a kind. */
function Add(): JSX.Element {
  return (
    <label class="line">
      <span class="name">{say.exposureAdd}</span>
      <select
        value=""
        onChange={({ currentTarget }) => {
          const kind = KINDS.find(([each]) => each === currentTarget.value)?.[0];
          currentTarget.value = "";
          if (kind !== undefined) act.addExposure(kind);
        }}
      >
        <option value="">{say.exposureAddKind}</option>
        {KINDS.map(([kind, name]) => (
          <option key={kind} value={kind}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}

/** How the chosen thing is in an exposure. */
function State({ shot, item }: { shot: Exposure; item: Item }): JSX.Element {
  const core = session.core();
  const is = core.state_in(shot.id, item.id) as keyof typeof STATES;
  const turn = shot.states?.find((each) => each.item === item.id)?.turn ?? item.turn;
  const put = (how: How) => act.putIn(shot.id, item.id, how);
  return (
    <section class="chosen-strip" aria-label={say.stateIn({ thing: item.name })}>
      <div class="line">
        <h3>{item.name}</h3>
        <span class="quiet">{STATES[is]}</span>
        <button class="word" onClick={() => session.choose(undefined)}>
          {say.done}
        </button>
      </div>
      <div class="steps" role="group" aria-label={say.stateIn({ thing: item.name })}>
        <button aria-pressed={is === "as-set"} onClick={() => put("as-set")}>
          {say.stateAsSet}
        </button>
        <button aria-pressed={is === "absent"} onClick={() => put("absent")}>
          {say.stateAbsent}
        </button>
        {core.has_food(item.id) ? (
          <>
            <button onClick={() => put({ look: "eaten" })}>{say.lookEaten}</button>
            <button onClick={() => put({ look: "cut" })}>{say.lookCut}</button>
            <button onClick={() => put({ look: "poured" })}>{say.lookPoured}</button>
          </>
        ) : null}
      </div>
      {is === "absent" ? null : (
        <>
          <Moves />
          <Stepper
            name={say.turn}
            value={say.degrees({ turn: String(turn) })}
            less={say.turnBack}
            more={say.turnOn}
            step={(by) => act.turnBy(item.id, by * 5)}
          />
        </>
      )}
      {core.has_food(item.id) ? (
        <label class="line">
          <span class="name">{say.lookFood}</span>
          <select
            value=""
            onChange={({ currentTarget }) => {
              const food = currentTarget.value;
              currentTarget.value = "";
              if (food !== "") put({ look: { food } });
            }}
          >
            <option value="">{say.lookFoodNone}</option>
            {(core.foods() as [string, string][]).map(([id, name]) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      ) : null}
    </section>
  );
}

/** What is not as it is set, each put back with one tap. */
function Unlike({ shot, items }: { shot: Exposure; items: readonly Item[] }): JSX.Element {
  const states = shot.states ?? [];
  if (states.length === 0) return <p class="quiet">{say.exposureLike}</p>;
  const name = (id: Id): string | undefined => items.find((item) => item.id === id)?.name;
  return (
    <div class="field" role="group" aria-label={say.exposureUnlike}>
      <span>{say.exposureUnlike}</span>
      <ul class="list">
        {states.map(({ item, state: is }) => (
          <li key={item} class="line">
            <button class="name" onClick={() => session.choose(item, true)}>
              {name(item) ?? say.stateGone}
            </button>
            <span class="quiet">{STATES[is]}</span>
            <button class="word" onClick={() => act.putIn(shot.id, item, "as-set")}>
              {say.stateAsSet}
            </button>
          </li>
        ))}
      </ul>
      {states.length > 1 ? (
        <button class="word" onClick={() => act.allAsSet(shot.id)}>
          {say.exposureAllSet}
        </button>
      ) : null}
    </div>
  );
}

/** The exposure that is shown. */
function Shot({ shot, layout }: { shot: Exposure; layout: Layout }): JSX.Element {
  const core = session.core();
  const hands = layout.hands?.filter(({ exposure }) => exposure === shot.id).length ?? 0;
  const item = state.chosenItem.value;
  const name = core.exposure_name(shot.id);
  return (
    <section class="panel" aria-label={name}>
      {item === undefined ? null : <State shot={shot} item={item} />}
      <Unlike shot={shot} items={layout.items} />
      <Stepper
        name={say.exposureTakes}
        value={say.exposureMinutes({ minutes: String(core.exposure_minutes(shot.id)) })}
        less={say.exposureShorter}
        more={say.exposureLonger}
        step={(by) => act.exposureTakes(shot.id, core.exposure_minutes(shot.id) + by)}
      />
      <div class="steps">
        <button class="word" onClick={() => act.shiftExposure(shot.id, false)}>
          {say.exposureEarlier}
        </button>
        <button class="word" onClick={() => act.shiftExposure(shot.id, true)}>
          {say.exposureLater}
        </button>
        <button class="word" onClick={() => act.removeExposure(shot.id)}>
          {hands === 0 ? say.exposureAwayAlone : say.exposureAway({ count: hands })}
        </button>
      </div>
    </section>
  );
}

/** Whether the picture shows what each adds. */
const Show = (): JSX.Element => (
  <Choice
    name={say.show}
    options={[
      ["", say.showNothing],
      ["exposures", say.showExposures],
    ]}
    value={state.shown.value === "exposures" ? "exposures" : ""}
    choose={(what) => {
      state.openFinding.value = undefined;
      state.shown.value = what;
    }}
  />
);

/** All exposures, and the one that is shown. */
export function Shots({ layout }: { layout: Layout }): JSX.Element {
  const all = layout.exposures ?? [];
  const shot = all.find(({ id }) => id === state.exposure.value);
  return (
    <>
      {all.length === 0 ? null : <Steps shots={all.map((each) => [each.id, called(all, each)])} />}
      {shot === undefined ? <Add /> : <Shot key={shot.id} shot={shot} layout={layout} />}
      {all.some(({ kind }) => kind === "hands") ? <Show /> : null}
    </>
  );
}
