// The picture as a list that can be worked: what is on the table, where it
// stands and what is said of it.

import type { JSX } from "preact";
import * as say from "#words";

import type { Thing } from "../core";
import * as session from "../session";
import * as several from "../several";
import * as state from "../state";

/** What the pressing findings say of a thing. */
function sentences(thing: Thing): string[] {
  return (state.report.value?.findings ?? [])
    .filter(({ state: is, about }) => (is === "wont-work" || is === "look-again") && about.includes(thing.id))
    .map((finding) => finding.sentence);
}

function One({ thing, picked }: { thing: Thing; picked: boolean | undefined }): JSX.Element {
  const chosen = thing.id === state.chosen.value;
  const words = [thing.where, thing.role, thing.locked ? say.locked : ""];
  return (
    <li>
      {picked === undefined ? (
        <span class="pick" />
      ) : (
        <label class="pick">
          <input
            type="checkbox"
            aria-label={say.pickOne({ thing: thing.name })}
            checked={picked}
            onChange={() => several.toggle(thing.id)}
          />
        </label>
      )}
      <button
        aria-pressed={chosen}
        onClick={() => session.choose(chosen ? undefined : thing.id)}
      >
        <b>{thing.number}</b>
        <span>{thing.name}</span>
        <small>{words.filter((word) => word !== "").join(" · ")}</small>
        {sentences(thing).map((sentence) => (
          <small key={sentence}>{sentence}</small>
        ))}
      </button>
    </li>
  );
}

export function Things(): JSX.Element {
  const things = state.things.value;
  const { items = [], linens = [] } = state.layout.value ?? {};
  // Hands are set, not picked.
  const can = new Set([...items, ...linens].map(({ id }) => id));
  const along = several.along.value;
  return (
    <section class="panel" aria-label={say.things}>
      <h3>{say.thingsTitle}</h3>
      {things.length === 0 ? <p class="quiet">{say.noThings}</p> : null}
      <ul class="things">
        {things.map((thing) => (
          <One
            key={thing.id}
            thing={thing}
            picked={can.has(thing.id) ? along.has(thing.id) : undefined}
          />
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
    <div class="steps which" role="group" aria-label={say.whichOne}>
      <span class="line">{say.whichOne}</span>
      {named.map((thing) => (
        <button
          key={thing.id}
          aria-pressed={state.chosen.value === thing.id}
          onClick={() => session.choose(thing.id, state.inside.value)}
        >
          {thing.name}
        </button>
      ))}
    </div>
  );
}
