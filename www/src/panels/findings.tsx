// Up to three sentences under the picture, each with its remedy; the rest as notes.

import type { JSX } from "preact";

import { act } from "../acts";
import type { Finding } from "../core";
import { Sample } from "../parts/lines";
import { Tape } from "../parts/controls";
import * as session from "../session";
import * as state from "../state";

const STATES: Partial<Record<Finding["state"], string>> = {
  "wont-work": "won’t work",
  intended: "intended",
  holds: "holds",
};

function One({ finding }: { finding: Finding }): JSX.Element {
  const open = state.openFinding.value === finding.key;
  const word = STATES[finding.state];
  return (
    <li class="find">
      <Sample reading={finding.reading} />
      <button
        aria-expanded={open}
        onClick={() => (state.openFinding.value = open ? undefined : finding.key)}
      >
        {finding.sentence}
        {word === undefined ? null : <span class="state"> {word}</span>}
      </button>
      <div>
        {finding.remedy ? (
          <Tape
            act={finding.remedy.act}
            predicted={finding.remedy.predicted}
            onClick={() => session.remedy(finding.key)}
          />
        ) : null}
        {open ? <Working finding={finding} /> : null}
      </div>
    </li>
  );
}

const GRADES: Record<string, string> = {
  physics: "Rests on physics or arithmetic.",
  "published-measure": "Rests on a published measure.",
  "trade-practice": "Rests on common practice; no source.",
  "our-choice": "The threshold is our choice.",
};

function Working({ finding }: { finding: Finding }): JSX.Element {
  return (
    <section class="working" aria-label="How this is worked out">
      <h3>How this is worked out</h3>
      <ul>
        {finding.working.map((line) => (
          <li key={line}>{line}</li>
        ))}
        <li>{GRADES[finding.grade] ?? finding.grade}</li>
      </ul>
      {finding.state === "look-again" ? (
        <button class="word" onClick={() => act.accept(finding)}>
          I mean it so
        </button>
      ) : null}
    </section>
  );
}

function Scores(): JSX.Element | null {
  const scores = state.report.value?.scores;
  if (!scores) return null;
  const parts: [string, number | null][] = [
    ["Balance", scores.balance],
    ["Triangle", scores.triangle],
    ["Separation", scores.separation],
  ];
  return (
    <p class="scores sans" aria-label="Scores out of 100">
      {parts.map(([name, score]) =>
        score === null ? null : (
          <span key={name}>
            {name} <b>{Math.round(score)}</b>
          </span>
        ),
      )}
    </p>
  );
}

export function Findings(): JSX.Element {
  const report = state.report.value;
  const all = report?.findings ?? [];
  const pressing = all.filter((finding) => finding.state === "wont-work" || finding.state === "look-again");
  const shown = pressing.slice(0, 3);
  const rest = all.filter((finding) => !shown.includes(finding));
  const notes = rest.length;
  return (
    <section aria-label="Findings">
      <Scores />
      {shown.length === 0 ? <p class="was">Nothing in this layout asks for another look.</p> : null}
      <ul>
        {shown.map((finding) => (
          <One key={finding.key} finding={finding} />
        ))}
        {state.allNotes.value ? rest.map((finding) => <One key={finding.key} finding={finding} />) : null}
      </ul>
      {notes > 0 ? (
        <button
          class="quiet"
          aria-expanded={state.allNotes.value}
          onClick={() => (state.allNotes.value = !state.allNotes.value)}
        >
          {state.allNotes.value ? "fewer notes" : `and ${notes} ${notes === 1 ? "note" : "notes"}`}
        </button>
      ) : null}
    </section>
  );
}
