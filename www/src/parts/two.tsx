// Two whole numbers typed side by side and taken together.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";

import type { Pair } from "../core";

export function TwoNumbers(props: {
  name: string;
  sides: readonly [string, string];
  done: string;
  /** Takes what was typed; not a number where a field holds none. */
  take: (typed: Pair) => void;
}): JSX.Element {
  const sides = [useSignal(""), useSignal("")] as const;
  const set = (event: Event): void => {
    event.preventDefault();
    props.take(sides.map((side) => Number(side.value || NaN)) as Pair);
  };
  return (
    <form class="line" onSubmit={set} aria-label={props.name}>
      {props.sides.map((name, n) => (
        <label key={name} class="field">
          <span>{name}</span>
          <input
            inputMode="numeric"
            maxLength={5}
            value={sides[n]?.value}
            onInput={(event) => sides[n] && (sides[n].value = event.currentTarget.value)}
          />
        </label>
      ))}
      <button class="word">{props.done}</button>
    </form>
  );
}
