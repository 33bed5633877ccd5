// A dish of one's own by outline, size and colours.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import * as say from "#words";

import * as mine from "../mine";
import { Choice } from "../parts/controls";
import * as put from "../put";
import * as state from "../state";

export function Own(): JSX.Element {
  const name = useSignal("");
  const inches = state.layout.value?.units === "in";
  const [unit, mm] = inches ? [say.unitsIn, 25.4] : [say.unitsCm, 10];
  const shape = useSignal<"round" | "oval" | "rect">("round");
  const sides = [useSignal(inches ? "10" : "26"), useSignal(inches ? "7" : "18")] as const;
  const dish = useSignal("#e9e2d2");
  const food = useSignal("#b9692f");
  const keep = useSignal(false);
  const add = (event: Event): void => {
    event.preventDefault();
    const [across, down] = sides.map((side) =>
      Math.round(Number(side.value.replace(",", ".")) * mm),
    ) as [number, number];
    const asked = shape.value === "round" ? [across] : [across, down];
    if (!asked.every((side) => side >= 10 && side <= 2000)) {
      state.fault.value = say.addRange({ least: state.length(10), most: state.length(2000) });
      return;
    }
    const added = put.own({
      name: name.value.trim() || say.ownDish,
      shape: shape.value,
      across,
      down: shape.value === "round" ? across : down,
      dish: dish.value,
      food: food.value,
    });
    if (added && keep.value && state.chosen.value !== undefined) void mine.keep(state.chosen.value);
    name.value = "";
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
          ]}
          value={shape.value}
          choose={(chosen) => (shape.value = chosen)}
        />
        {sides.slice(0, shape.value === "round" ? 1 : 2).map((side, n) => (
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
        {(
          [
            [say.colourDish, dish],
            [say.colourFood, food],
          ] as const
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
