// What is chosen, and everything that can be done to it by tap and step.

import type { JSX } from "preact";

import { act } from "../acts";
import type { Item, Linen, Part, Role, Size } from "../core";
import { Choice, Colour, Field, Panel, Stepper } from "../parts/controls";
import { nudge } from "../picture";
import * as session from "../session";
import * as state from "../state";

const ROLES: readonly (readonly [Role, string])[] = [
  ["hero", "hero"],
  ["support", "main dish"],
  ["accent", "accent"],
  ["filler", "filler"],
];

function Moves(): JSX.Element {
  const steps: [string, string, number, number][] = [
    ["←", "Left 1 cm", -10, 0],
    ["↑", "Up 1 cm", 0, -10],
    ["↓", "Down 1 cm", 0, 10],
    ["→", "Right 1 cm", 10, 0],
  ];
  return (
    <div class="line" role="group" aria-label="Move">
      <span class="name">Move, 1 cm a step</span>
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

function extent(size: Size): [number, number] {
  switch (size.shape) {
    case "disc":
      return [size.diameter, size.diameter];
    case "outline": {
      const reach = (axis: 0 | 1): number =>
        Math.max(...size.points.map((point) => Math.abs(point[axis]))) * 2;
      return [reach(0), reach(1)];
    }
    default:
      return [size.width, size.depth];
  }
}

function Sizes({ item }: { item: Item }): JSX.Element {
  const [width, depth] = extent(item.size);
  const round = item.size.shape === "disc";
  return (
    <>
      <Stepper
        name={round ? "Across" : "Width"}
        value={state.length(width)}
        less="Narrower by 1 cm"
        more="Wider by 1 cm"
        step={(by) => act.resize(item.id, Math.max(10, width + 10 * by), round ? width + 10 * by : depth)}
      />
      {round ? null : (
        <Stepper
          name="Depth"
          value={state.length(depth)}
          less="Shallower by 1 cm"
          more="Deeper by 1 cm"
          step={(by) => act.resize(item.id, width, Math.max(10, depth + 10 * by))}
        />
      )}
    </>
  );
}

const PARTS: readonly (readonly ["rim" | "well" | "food", string])[] = [
  ["rim", "Colour of the rim"],
  ["well", "Colour inside"],
  ["food", "Colour of the food"],
];

function Colours({ item }: { item: Item }): JSX.Element {
  const tone = (part: Part | undefined): string | undefined => part?.colours[0]?.srgb;
  return (
    <>
      {PARTS.map(([part, name]) => {
        const value = tone(item.parts?.[part]) ?? session.core().colour_of(item.id, part);
        if (!value) return null;
        return (
          <Colour
            key={part}
            name={name}
            value={value}
            take={(srgb) => act.recolour(item, part, srgb)}
          />
        );
      })}
    </>
  );
}

function Support({ item }: { item: Item }): JSX.Element | null {
  const others = (state.layout.value?.items ?? []).filter((other) => other.id !== item.id);
  if (others.length === 0) return null;
  return (
    <label class="field">
      <span>Stands on</span>
      <select
        value={String(item.on ?? 0)}
        onChange={(event) => act.putOn(item.id, Number(event.currentTarget.value))}
      >
        <option value="0">the table</option>
        {others.map((other) => (
          <option key={other.id} value={String(other.id)}>
            {other.name}
          </option>
        ))}
      </select>
    </label>
  );
}

function Common(props: { thing: Item | Linen; turn: number }): JSX.Element {
  const { id, name, locked } = props.thing;
  return (
    <>
      <Field name="Name" value={name} take={(value) => act.rename(id, value)} />
      <Moves />
      <Stepper
        name="Turn"
        value={`${props.turn}°`}
        less="Turn 5° anticlockwise"
        more="Turn 5° clockwise"
        step={(by) => act.turnBy(id, by * 5)}
      />
      <label class="check">
        <input
          type="checkbox"
          checked={locked ?? false}
          onChange={(event) => act.lock(id, event.currentTarget.checked)}
        />
        Locked in place
      </label>
    </>
  );
}

function Acts({ id, group }: { id: number; group?: number | undefined }): JSX.Element {
  return (
    <div class="steps">
      <button class="word" onClick={() => act.duplicate([id])}>
        Repeat it
      </button>
      {group === undefined ? null : (
        <button class="word" onClick={() => act.ungroup(group)}>
          Take the group apart
        </button>
      )}
      <button class="word" onClick={() => act.remove([id])}>
        Take it away
      </button>
      <button class="word" onClick={() => session.choose(undefined)}>
        Done
      </button>
    </div>
  );
}

export function ItemPanel({ item }: { item: Item }): JSX.Element {
  const near = state.things.value.filter((thing) => thing.id !== item.id);
  return (
    <Panel title={item.name}>
      <Acts id={item.id} group={item.group} />
      <Choice
        name="In the picture it is"
        options={ROLES}
        value={item.role}
        choose={(role) => act.role(item.id, role)}
      />
      <Common thing={item} turn={item.turn} />
      <Sizes item={item} />
      <Stepper
        name="Height"
        value={state.length(item.height)}
        less="Lower by 1 cm"
        more="Taller by 1 cm"
        step={(by) => act.height(item.id, Math.max(0, item.height + 10 * by))}
      />
      <Colours item={item} />
      <Support item={item} />
      {item.group === undefined && near.length > 0 ? (
        <label class="field">
          <span>Move together with</span>
          <select
            value="0"
            onChange={(event) => act.group([item.id, Number(event.currentTarget.value)])}
          >
            <option value="0">nothing else</option>
            {near.map((thing) => (
              <option key={thing.id} value={String(thing.id)}>
                {thing.name}
              </option>
            ))}
          </select>
        </label>
      ) : null}
    </Panel>
  );
}

export function LinenPanel({ linen }: { linen: Linen }): JSX.Element {
  const [width, depth] = linen.size;
  return (
    <Panel title={linen.name}>
      <Acts id={linen.id} />
      <Choice
        name="It lies"
        options={[
          ["flat", "flat"],
          ["folded", "folded"],
          ["bunched", "bunched"],
          ["thrown", "thrown"],
        ]}
        value={linen.state}
        choose={(lies) => act.linen(linen, { state: lies })}
      />
      <Common thing={linen} turn={linen.turn} />
      <Stepper
        name="Width"
        value={state.length(width)}
        less="Narrower by 5 cm"
        more="Wider by 5 cm"
        step={(by) => act.linen(linen, { size: [Math.max(50, width + 50 * by), depth] })}
      />
      <Stepper
        name="Depth"
        value={state.length(depth)}
        less="Shallower by 5 cm"
        more="Deeper by 5 cm"
        step={(by) => act.linen(linen, { size: [width, Math.max(50, depth + 50 * by)] })}
      />
      <Colour name="Colour" value={linen.colour} take={(colour) => act.linen(linen, { colour })} />
    </Panel>
  );
}
