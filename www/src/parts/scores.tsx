// The one quiet line under the picture: three scores, and while something is
// dragged whether each rises or falls.

import type { JSX } from "preact";
import * as say from "#words";

import type { Scores } from "../core";
import * as state from "../state";

export const PARTS: readonly (readonly [keyof Scores, string, string])[] = [
  ["balance", say.scoreBalance, "balance"],
  ["triangle", say.scoreTriangle, "triangle"],
  ["separation", say.scoreSeparation, "separation"],
];

/** Which way a score goes: a sign for the eye, a word for the ear. */
export function Way({ from, to }: { from: number; to: number }): JSX.Element | null {
  const by = Math.round(to) - Math.round(from);
  if (by === 0) return null;
  return (
    <span class={by > 0 ? "up" : "down"}>
      <span aria-hidden="true">{by > 0 ? "↑" : "↓"}</span>
      <span class="away">{by > 0 ? say.scoreRises : say.scoreFalls}</span>
    </span>
  );
}

/** Opens the marks and the working of the finding behind a score. */
function open(reading: string): void {
  const findings = state.report.value?.findings ?? [];
  // A triangle of accents is not the one that is scored.
  const found =
    findings.find(({ key }) => key === reading) ??
    findings.find((finding) => finding.reading === reading);
  if (found === undefined) return;
  const same = state.openFinding.value === found.key;
  state.place.value = "table";
  state.openFinding.value = same ? undefined : found.key;
}

export function ScoreLine(): JSX.Element {
  const scores = state.report.value?.scores;
  const live = state.live.value?.scores;
  const within = state.layout.value?.crops.find(({ id }) => id === state.report.value?.crop);
  return (
    <div class="scores sans" role="group" aria-label={say.scores}>
      {PARTS.map(([part, name, reading]) => {
        const score = scores?.[part] ?? null;
        const now = live?.[part] ?? score;
        if (score === null || now === null) return null;
        return (
          <button key={part} onClick={() => open(reading)}>
            {name} <b>{Math.round(now)}</b>
            <Way from={score} to={now} />
          </button>
        );
      })}
      {scores && within !== undefined ? <span>{say.scoresIn({ crop: within.name })}</span> : null}
      {state.reading.value ? <span class="late">{say.reading}</span> : null}
    </div>
  );
}
