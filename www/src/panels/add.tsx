// Adding: search by trade name or size, or an own dish by size and colour.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import * as say from "#words";

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
  const size = useSignal(inches ? "10" : "26");
  const dish = useSignal("#e9e2d2");
  const food = useSignal("#b9692f");
  const add = (event: Event): void => {
    event.preventDefault();
    const across = Math.round(Number(size.value.replace(",", ".")) * mm);
    if (!(across >= 10 && across <= 2000)) {
      state.fault.value = say.addRange({ least: state.length(10), most: state.length(2000) });
      return;
    }
    const [x, y] = middle();
    session.addOwn({
      name: name.value.trim() || say.ownDish,
      across,
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
      <label class="field">
        <span>{say.addAcross({ unit })}</span>
        <input
          inputMode="decimal"
          maxLength={8}
          value={size.value}
          onInput={(event) => (size.value = event.currentTarget.value)}
        />
      </label>
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
