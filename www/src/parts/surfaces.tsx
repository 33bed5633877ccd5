// The surfaces of the catalogue, each with a piece of it.

import type { JSX } from "preact";
import * as say from "#words";

import * as session from "../session";
import { Surface } from "./small";

export function Surfaces(props: { value: string; choose: (prop: string) => void }): JSX.Element {
  const all = session.core().surfaces() as { prop: string; name: string }[];
  const now = all.find(({ prop }) => prop === props.value)?.name ?? "";
  return (
    <details class="surfaces">
      <summary>
        {now === "" ? null : <Surface prop={props.value} />}
        <span>{now === "" ? say.surfaces : say.surfacePick({ surface: now })}</span>
      </summary>
      <ul class="swatches" aria-label={say.surfaces}>
        {all.map(({ prop, name }) => (
          <li key={prop}>
            <button aria-pressed={prop === props.value} onClick={() => props.choose(prop)}>
              <Surface prop={prop} />
              <span>{name}</span>
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
