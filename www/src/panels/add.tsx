// Adding: search by trade name or size, or an own dish by size and colour.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import * as say from "#words";

import { Choice } from "../parts/controls";
import * as session from "../session";
import * as state from "../state";

/** One find in the catalogue. */
export interface Found {
  prop: string;
  name: string;
  size: string;
}

function middle(): [number, number] {
  return state.layout.value?.frame.at ?? [0, 0];
}

export function Add(): JSX.Element {
  const words = useSignal("");
  const found = session.core().search(words.value) as Found[];
  return (
    <details>
      <summary>{say.add}</summary>
      <section class="panel" aria-label={say.add}>
        <label class="field">
          <span>{say.addSearch}</span>
          <input
            type="search"
            maxLength={say.MAX_NAME}
            value={words.value}
            onInput={(event) => (words.value = event.currentTarget.value)}
          />
        </label>
        <ul class="list" aria-label={say.addFound}>
          {found.slice(0, 12).map((each) => (
            <li key={each.prop}>
              <button onClick={() => session.add(each.prop, ...middle())}>
                {each.name} <span class="sans quiet">{each.size}</span>
              </button>
            </li>
          ))}
        </ul>
        {found.length === 0 ? <p class="quiet">{say.addNothing}</p> : null}
        <Own />
      </section>
    </details>
  );
}

function Own(): JSX.Element {
  const name = useSignal("");
  const inches = state.layout.value?.units === "in";
  const [unit, mm] = inches ? [say.unitsIn, 25.4] : [say.unitsCm, 10];
  const shape = useSignal<"round" | "oval" | "rect">("round");
  const sides = [useSignal(inches ? "10" : "26"), useSignal(inches ? "7" : "18")] as const;
  const dish = useSignal("#e9e2d2");
  const food = useSignal("#b9692f");
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
    const [x, y] = middle();
    session.addOwn({
      name: name.value.trim() || say.ownDish,
      shape: shape.value,
      across,
      down: shape.value === "round" ? across : down,
      dish: dish.value,
      food: food.value,
      at: [x, y],
    });
    name.value = "";
  };
  return (
    <form class="panel" onSubmit={add} aria-label={say.addOwn}>
      <h3>{say.addOwn}</h3>
      <label class="field">
        <span>{say.name}</span>
        <input maxLength={say.MAX_NAME} value={name.value} onInput={(event) => (name.value = event.currentTarget.value)} />
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
      <label class="line">
        <span class="name">{say.colourDish}</span>
        <input
          type="color"
          value={dish.value}
          onInput={(event) => (dish.value = event.currentTarget.value)}
        />
      </label>
      <label class="line">
        <span class="name">{say.colourFood}</span>
        <input
          type="color"
          value={food.value}
          onInput={(event) => (food.value = event.currentTarget.value)}
        />
      </label>
      <button class="word">{say.addIt}</button>
    </form>
  );
}
