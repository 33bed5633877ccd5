// What of light and camera is shown all at once on the picture, and what is
// said of it.

import type { JSX } from "preact";
import * as say from "#words";

import { Choice } from "../parts/controls";
import * as state from "../state";
import { One } from "./findings";

const SHOWN: readonly (readonly [state.Shown, string])[] = [
  ["", say.showNothing],
  ["light", say.showStops],
  ["glare", say.showGlare],
];

export function Show(): JSX.Element {
  const { report, shown, openFinding } = state;
  const all = report.value?.findings ?? [];
  const found = all.filter(({ reading }) => reading === shown.value);
  return (
    <>
      <Choice
        name={say.show}
        options={SHOWN}
        value={shown.value}
        choose={(what) => {
          openFinding.value = undefined;
          shown.value = what;
        }}
      />
      <ul>
        {found.map((finding) => (
          <One key={finding.key} finding={finding} />
        ))}
      </ul>
      {shown.value === "glare" && found.length === 0 ? <p>{say.showGlareNone}</p> : null}
    </>
  );
}
