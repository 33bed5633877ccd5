// What is chosen, and everything that can be done to it by tap and step.

import type { ComponentChildren, JSX } from "preact";
import * as say from "#words";

import { act } from "../acts";
import { extent } from "../core";
import type { Item, Linen, Role, Tone } from "../core";
import * as mine from "../mine";
import { Choice, Colour, Field, Stepper } from "../parts/controls";
import { nudge } from "../picture";
import * as session from "../session";
import * as state from "../state";
import * as units from "../units";
import { Arrange, Lying, Over, Tucked } from "./arrange";
import { Photo, Tones } from "./photo";
import { Holds } from "./order";

const ROLES: readonly (readonly [Role, string])[] = [
  ["hero", say.roleHero],
  ["support", say.roleMain],
  ["accent", say.roleAccent],
  ["filler", say.roleFiller],
];

/** Steps for what is chosen or picked. */
export function Moves(): JSX.Element {
  const steps: [string, string, number, number][] = [
    ["←", say.stepLeft, -10, 0],
    ["↑", say.stepUp, 0, -10],
    ["↓", say.stepDown, 0, 10],
    ["→", say.stepRight, 10, 0],
  ];
  return (
    <div class="line" role="group" aria-label={say.move}>
      <span class="name">{say.moveStep}</span>
      <span class="stepper">
        {steps.map(([sign, label, dx, dy]) => (
          <button key={label} aria-label={label} onClick={() => nudge(dx, dy)}>
            {sign}
          </button>
        ))}
      </span>
    </div>
  );
}

function Sizes({ item }: { item: Item }): JSX.Element {
  const [width, depth] = extent(item.size);
  const round = item.size.shape === "disc";
  const by = units.length(10);
  return (
    <>
      <Stepper
        name={round ? say.across : say.width}
        value={units.length(width)}
        less={say.narrower({ by })}
        more={say.wider({ by })}
        step={(way) => {
          const now = Math.max(10, width + 10 * way);
          act.resize(item.id, now, round ? now : depth);
        }}
      />
      {round ? null : (
        <Stepper
          name={say.depth}
          value={units.length(depth)}
          less={say.shallower({ by })}
          more={say.deeper({ by })}
          step={(way) => act.resize(item.id, width, Math.max(10, depth + 10 * way))}
        />
      )}
      <Stepper
        name={say.height}
        value={units.length(item.height)}
        less={say.lower({ by })}
        more={say.taller({ by })}
        step={(way) => act.height(item.id, Math.max(0, item.height + 10 * way))}
      />
    </>
  );
}

const PARTS: readonly (readonly ["rim" | "well" | "food", string])[] = [
  ["rim", say.colourRim],
  ["well", say.colourWell],
  ["food", say.colourFood],
];

function Colours({ item }: { item: Item }): JSX.Element {
  /** As written, or as the catalogue has it. */
  const tones = (part: (typeof PARTS)[number][0]): readonly Tone[] => {
    const own = item.parts?.[part]?.colours;
    if (own !== undefined) return own;
    const srgb = session.core().colour_of(item.id, part);
    return srgb === "" ? [] : [{ srgb, share: 100, origin: "guess" }];
  };
  const parts = PARTS.filter(([part]) => tones(part).length > 0);
  return (
    <>
      {parts.map(([part, name]) => (
        <div key={part}>
          <Colour
            name={name}
            value={tones(part)[0]?.srgb ?? ""}
            take={(srgb) => act.recolour(item, part, srgb)}
          />
          <Tones tones={tones(part)} />
        </div>
      ))}
      <Photo
        key={item.id}
        thing={item.name}
        parts={parts}
        take={(part, read) => act.photo(item, part, read)}
      />
    </>
  );
}

/** Colour of what has only one, and where it comes from. */
export function PlainColour(props: {
  thing: string;
  name: string;
  colour: string;
  origin: Tone["origin"] | undefined;
  take: (colour: string, origin: Tone["origin"]) => boolean;
}): JSX.Element {
  const { colour, origin = "guess" } = props;
  return (
    <>
      <div>
        <Colour name={props.name} value={colour} take={(srgb) => props.take(srgb, "guess")} />
        <Tones tones={[{ srgb: colour, share: 100, origin }]} />
      </div>
      <Photo
        thing={props.thing}
        parts={[["whole", props.name]]}
        plain
        take={(_, [read]) => read !== undefined && props.take(read.srgb, "photo")}
      />
    </>
  );
}

/** Whether `id` stands somewhere on `below`. */
function restsOn(items: Item[], id: number, below: number): boolean {
  let at = items.find((item) => item.id === id)?.on;
  for (let step = 0; at !== undefined && step < items.length; step += 1) {
    if (at === below) return true;
    at = items.find((item) => item.id === at)?.on;
  }
  return false;
}

function Pick(props: {
  name: string;
  none: string;
  value: number;
  among: readonly { id: number; name: string }[];
  take: (id: number) => void;
}): JSX.Element {
  return (
    <label class="field">
      <span>{props.name}</span>
      <select
        value={String(props.value)}
        onChange={(event) => props.take(Number(event.currentTarget.value))}
      >
        <option value="0">{props.none}</option>
        {props.among.map((each) => (
          <option key={each.id} value={String(each.id)}>
            {each.name}
          </option>
        ))}
      </select>
    </label>
  );
}

function Common({ thing }: { thing: Item | Linen }): JSX.Element {
  return (
    <>
      <Field name={say.name} value={thing.name} take={(value) => act.rename(thing.id, value)} />
      <button class="word" onClick={() => void mine.keep(thing.id)}>
        {say.mineKeep}
      </button>
      <Moves />
    </>
  );
}

/** What one does most with a thing, at the thumb. */
function Strip(props: {
  thing: Item | Linen;
  children?: ComponentChildren;
}): JSX.Element {
  const { id, name, turn, locked } = props.thing;
  return (
    <section class="chosen-strip" aria-label={name}>
      <div class="line">
        <h2>{name}</h2>
        <button class="word" onClick={() => session.choose(undefined)}>
          {say.done}
        </button>
      </div>
      <Stepper
        name={say.turn}
        value={say.degrees({ turn: String(turn) })}
        less={say.turnBack}
        more={say.turnOn}
        step={(by) => act.turnBy(id, by * 5)}
      />
      <div class="steps">
        <button class="word" onClick={() => act.repeat(id)}>
          {say.repeat}
        </button>
        <button class="word" aria-pressed={locked ?? false} onClick={() => act.lock(id, !locked)}>
          {locked ? say.unlock : say.lock}
        </button>
        {props.children}
        <button class="word" onClick={() => act.remove([id])}>
          {say.takeAway}
        </button>
      </div>
    </section>
  );
}

export function ItemPanel({ item }: { item: Item }): JSX.Element {
  const items = state.layout.value?.items ?? [];
  const others = items.filter((other) => other.id !== item.id);
  const supports = others.filter((other) => !restsOn(items, other.id, item.id));
  const { group } = item;
  return (
    <>
      <Strip thing={item}>
        <Lying item={item} />
        <Tucked item={item} />
        {group === undefined ? null : (
          <>
            <button
              class="word"
              aria-pressed={state.inside.value}
              onClick={() => session.choose(item.id, !state.inside.value)}
            >
              {say.onlyThis}
            </button>
            <button class="word" onClick={() => act.ungroup(item.id)}>
              {say.takeApart}
            </button>
          </>
        )}
      </Strip>
      <details>
        <summary>{say.moreAbout({ thing: item.name })}</summary>
        <div class="panel">
          <Choice
            name={say.role}
            options={ROLES}
            value={item.role}
            choose={(role) => act.role(item.id, role)}
          />
          <Common thing={item} />
          <Sizes item={item} />
          <Colours item={item} />
          {item.parts?.food ? <Holds item={item} /> : null}
          {supports.length === 0 ? null : (
            <Pick
              name={say.standsOn}
              none={say.onTable}
              value={item.on ?? 0}
              among={supports}
              take={(id) => act.putOn(item.id, id)}
            />
          )}
          {group !== undefined || others.length === 0 ? null : (
            <Pick
              name={say.movesWith}
              none={say.movesAlone}
              value={0}
              among={others}
              take={(id) => id !== 0 && act.group(item.id, id)}
            />
          )}
        </div>
      </details>
      <Arrange ids={[item.id]} title={say.arrange({ thing: item.name })} />
    </>
  );
}

export function LinenPanel({ linen }: { linen: Linen }): JSX.Element {
  const [width, depth] = linen.size;
  const by = units.length(50);
  return (
    <>
      <Strip thing={linen}>
        <Over linen={linen} />
      </Strip>
      <Choice
        name={say.linenLies}
        options={[
          ["flat", say.linenFlat],
          ["folded", say.linenFolded],
          ["bunched", say.linenBunched],
          ["thrown", say.linenThrown],
        ]}
        value={linen.state}
        choose={(lies) => act.linen(linen, { state: lies })}
      />
      <details>
        <summary>{say.moreAbout({ thing: linen.name })}</summary>
        <div class="panel">
          <Common thing={linen} />
          <Stepper
            name={say.width}
            value={units.length(width)}
            less={say.narrower({ by })}
            more={say.wider({ by })}
            step={(way) => act.linen(linen, { size: [Math.max(50, width + 50 * way), depth] })}
          />
          <Stepper
            name={say.depth}
            value={units.length(depth)}
            less={say.shallower({ by })}
            more={say.deeper({ by })}
            step={(way) => act.linen(linen, { size: [width, Math.max(50, depth + 50 * way)] })}
          />
          <PlainColour
            key={linen.id}
            thing={linen.name}
            name={say.colour}
            colour={linen.colour}
            origin={linen.origin}
            take={(colour, origin) => act.linen(linen, { colour, origin })}
          />
        </div>
      </details>
    </>
  );
}
