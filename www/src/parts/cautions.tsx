// What to take care of, as the core says it.

import type { JSX } from "preact";
import * as say from "#words";

import type { Caution } from "../core";
import { report } from "../state";

/** The cautions of these concerns, one line each; nothing when none applies. */
export function Cautions(props: { of: readonly Caution["concern"][] }): JSX.Element | null {
  const lines = (report.value?.cautions ?? []).filter(({ concern }) => props.of.includes(concern));
  if (lines.length === 0) return null;
  return (
    <ul class="cautions" aria-label={say.takeCare}>
      {lines.map(({ id, line }) => (
        <li key={id} class="caution">
          {line}
        </li>
      ))}
    </ul>
  );
}
