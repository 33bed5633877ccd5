// The picture as a list that can be worked: what is on the table, and where.

import type { JSX } from "preact";

import * as session from "../session";
import * as state from "../state";

export function Things(): JSX.Element {
  const chosen = state.chosen.value;
  return (
    <section class="panel" aria-label="Things on the table">
      <h3>On the table</h3>
      <ul class="things">
        {state.things.value.map((thing) => (
          <li key={thing.id}>
            <button
              aria-pressed={thing.id === chosen}
              onClick={() => session.choose(thing.id === chosen ? undefined : thing.id)}
            >
              <b>{thing.number}</b>
              <span>{thing.name}</span>
              <span class="quiet">{thing.locked ? "locked" : ""}</span>
              <small>
                {[thing.where, thing.role].filter((word) => word !== "").join(" · ")}
              </small>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Which of the things under the finger is meant. */
export function Which(): JSX.Element | null {
  const which = state.which.value;
  if (which.length < 2) return null;
  const named = state.things.value.filter((thing) => which.includes(thing.id));
  return (
    <div class="steps" role="group" aria-label="Which one?">
      <span class="line">Which one?</span>
      {named.map((thing) => (
        <button
          key={thing.id}
          aria-pressed={state.chosen.value === thing.id}
          onClick={() => session.choose(thing.id)}
        >
          {thing.name}
        </button>
      ))}
    </div>
  );
}
