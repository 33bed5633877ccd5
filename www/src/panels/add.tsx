// Adding: search by trade name or size, or an own dish by size and colour.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";

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
      <summary>Add a thing</summary>
      <section class="panel" aria-label="Add a thing">
        <label class="field">
          <span>Trade name or size, such as “coupe 26” or “runner”</span>
          <input
            type="search"
            value={words.value}
            onInput={(event) => (words.value = event.currentTarget.value)}
          />
        </label>
        <ul class="list" aria-label="Found">
          {found.slice(0, 12).map((each) => (
            <li key={each.prop}>
              <button onClick={() => session.add(each.prop, ...middle())}>
                {each.name} <span class="sans quiet">{each.size}</span>
              </button>
            </li>
          ))}
        </ul>
        {found.length === 0 ? <p class="quiet">Nothing by that name. Make it as your own below.</p> : null}
        <Own />
      </section>
    </details>
  );
}

function Own(): JSX.Element {
  const name = useSignal("");
  const size = useSignal("26");
  const dish = useSignal("#e9e2d2");
  const food = useSignal("#b9692f");
  const add = (event: Event): void => {
    event.preventDefault();
    const across = Math.round(Number(size.value.replace(",", ".")) * 10);
    if (!(across >= 10 && across <= 2000)) {
      state.fault.value = "A dish is 1 to 200 cm across. Nothing was added.";
      return;
    }
    const [x, y] = middle();
    session.addOwn({
      name: name.value.trim() || "own dish",
      across,
      dish: dish.value,
      food: food.value,
      at: [x, y],
    });
    name.value = "";
  };
  return (
    <form class="panel" onSubmit={add} aria-label="Own dish">
      <h3>Own dish</h3>
      <label class="field">
        <span>Name</span>
        <input value={name.value} onInput={(event) => (name.value = event.currentTarget.value)} />
      </label>
      <label class="field">
        <span>Across, cm</span>
        <input
          inputMode="decimal"
          value={size.value}
          onInput={(event) => (size.value = event.currentTarget.value)}
        />
      </label>
      <label class="line">
        <span class="name">Colour of the dish</span>
        <input
          type="color"
          value={dish.value}
          onInput={(event) => (dish.value = event.currentTarget.value)}
        />
      </label>
      <label class="line">
        <span class="name">Colour of the food</span>
        <input
          type="color"
          value={food.value}
          onInput={(event) => (food.value = event.currentTarget.value)}
        />
      </label>
      <button class="word">Add it</button>
    </form>
  );
}
