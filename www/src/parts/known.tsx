// A thing of the catalogue, found by its name or size and chosen.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import * as say from "#words";

import * as session from "../session";
import { Search } from "./controls";
import { Small } from "./small";

/** Finds shown at once. */
export const FINDS = 8;

/** Finds what fits the words typed, or at first `words`. */
export function Known(props: { name: string; words?: string; take: (prop: string) => void }): JSX.Element {
  const asked = useSignal("");
  const words = asked.value.trim() || (props.words ?? "");
  const finds = words === "" ? [] : (session.core().search(words) as { prop: string; name: string; size: string }[]);
  return (
    <>
      <Search name={say.addSearch} value={asked.value} take={(to) => (asked.value = to)} />
      <ul class="finds" aria-label={props.name}>
        {finds.slice(0, FINDS).map(({ prop, name, size }) => (
          <li key={prop}>
            <button
              onClick={() => {
                asked.value = "";
                props.take(prop);
              }}
            >
              <Small of={prop} draw={(core, svg, of) => core.draw_sample(svg, of)} />
              <span>
                {name} <small class="sans quiet">{size}</small>
              </span>
            </button>
          </li>
        ))}
      </ul>
      {words !== "" && finds.length === 0 ? <p class="quiet">{say.addNothing}</p> : null}
    </>
  );
}
