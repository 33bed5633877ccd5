// A thing of one's own by outline, size and colours, or traced over a photo.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import * as say from "#words";

import * as mine from "../mine";
import { Choice } from "../parts/controls";
import * as put from "../put";
import * as state from "../state";
import * as units from "../units";
import type { Outline } from "../trace";
import { Trace } from "./trace";

type Shape = "round" | "oval" | "rect" | "traced";
/** What a traced thing is. */
type Sort = "dish" | "board" | "other";

export function Own(): JSX.Element {
  const name = useSignal("");
  const inches = state.layout.value?.units === "in";
  const [unit, mm] = inches ? [say.unitsIn, 25.4] : [say.unitsCm, 10];
  const shape = useSignal<Shape>("round");
  const sort = useSignal<Sort>("dish");
  const outline = useSignal<Outline | undefined>(undefined);
  const sides = [useSignal(inches ? "10" : "26"), useSignal(inches ? "7" : "18")] as const;
  const dish = useSignal("#e9e2d2");
  const food = useSignal("#b9692f");
  const keep = useSignal(false);
  const traced = shape.value === "traced";
  /** What is asked for, or nothing when something of it is missing or amiss. */
  const wished = (): object | undefined => {
    const { value: found } = outline;
    if (traced) {
      if (found === undefined) state.fault.value = say.traceMissing;
      return found && { shape: sort.value, across: found.width, down: found.depth, points: found.points };
    }
    const [across, down] = sides.map((side) =>
      Math.round(Number(side.value.replace(",", ".")) * mm),
    ) as [number, number];
    const asked = shape.value === "round" ? [across] : [across, down];
    if (!asked.every((side) => side >= 10 && side <= 2000)) {
      state.fault.value = say.addRange({ least: units.length(10), most: units.length(2000) });
      return undefined;
    }
    const [width, depth] = [across, shape.value === "round" ? across : down];
    return { shape: shape.value, across: width, down: depth, food: food.value };
  };
  const add = (event: Event): void => {
    event.preventDefault();
    const wish = wished();
    if (wish === undefined) return;
    const called = name.value.trim() || (traced ? say.ownProp : say.ownDish);
    if (!put.own({ ...wish, name: called, dish: dish.value })) return;
    if (keep.value && state.chosen.value !== undefined) void mine.keep(state.chosen.value);
    name.value = "";
    // The photo has done its work and is let go.
    if (traced) shape.value = "round";
  };
  return (
    <details>
      <summary>{say.addOwn}</summary>
      <form class="panel" onSubmit={add} aria-label={say.addOwn}>
        <label class="field">
          <span>{say.name}</span>
          <input
            maxLength={say.MAX_NAME}
            value={name.value}
            onInput={(event) => (name.value = event.currentTarget.value)}
          />
        </label>
        <Choice
          name={say.ownShape}
          options={[
            ["round", say.ownRound],
            ["oval", say.ownOval],
            ["rect", say.ownRect],
            ["traced", say.ownTraced],
          ]}
          value={shape.value}
          choose={(chosen) => {
            shape.value = chosen;
            // What was traced is not traced again.
            if (chosen === "traced") keep.value = true;
          }}
        />
        {traced ? (
          <>
            <Trace found={(found) => (outline.value = found)} />
            <Choice
              name={say.ownSort}
              options={[
                ["dish", say.ownSortDish],
                ["board", say.ownSortBoard],
                ["other", say.ownSortOther],
              ]}
              value={sort.value}
              choose={(chosen) => (sort.value = chosen)}
            />
          </>
        ) : null}
        {sides.slice(0, traced ? 0 : shape.value === "round" ? 1 : 2).map((side, n) => (
          <label key={n} class="field">
            <span>{(n === 0 ? say.addAcross : say.addDown)({ unit })}</span>
            <input
              inputMode="decimal"
              maxLength={8}
              value={side.value}
              onInput={(event) => (side.value = event.currentTarget.value)}
            />
          </label>
        ))}
        {(traced
          ? ([[say.colour, dish]] as const)
          : ([
              [say.colourDish, dish],
              [say.colourFood, food],
            ] as const)
        ).map(([label, colour]) => (
          <label key={label} class="line">
            <span class="name">{label}</span>
            <input
              type="color"
              value={colour.value}
              onInput={(event) => (colour.value = event.currentTarget.value)}
            />
          </label>
        ))}
        <label class="check">
          <input
            type="checkbox"
            checked={keep.value}
            onChange={(event) => (keep.value = event.currentTarget.checked)}
          />
          <span>{say.mineKeep}</span>
        </label>
        <button class="word">{say.addIt}</button>
      </form>
    </details>
  );
}
