// What the layout says: up to three sentences under the picture, each with its
// remedy; while something is dragged, what that changes.

import type { JSX } from "preact";
import * as say from "#words";

import { act } from "../acts";
import type { Live } from "../asked";
import type { Finding } from "../core";
import { Choice, Tape } from "../parts/controls";
import { Sample } from "../parts/lines";
import { WayOut } from "./propose";
import * as session from "../session";
import * as state from "../state";

const MOST = 3;
const STATES: Partial<Record<Finding["state"], string>> = {
  "wont-work": say.stateWontWork,
  intended: say.stateIntended,
  holds: say.stateHolds,
};
const GRADES: Record<string, string> = {
  physics: say.gradePhysics,
  "published-measure": say.gradePublished,
  "trade-practice": say.gradePractice,
  "our-choice": say.gradeOurs,
};

/** One finding with its remedy and, when it is open, its working. */
export function One({ finding }: { finding: Finding }): JSX.Element {
  const open = state.openFinding.value === finding.key;
  const word = STATES[finding.state];
  const pressing = finding.state === "wont-work" || finding.state === "look-again";
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
      {finding.remedy || open || pressing ? (
        <div>
          {finding.remedy ? (
            <Tape
              act={finding.remedy.act}
              predicted={finding.remedy.predicted}
              onClick={() => session.remedy(finding.key)}
            />
          ) : null}
          <WayOut finding={finding} open={open} />
          {open ? <Working finding={finding} /> : null}
        </div>
      ) : null}
    </li>
  );
}

/** Of what a triangle is shown, and what is said where there are not three. */
const CORNERS: readonly (readonly [string, string, string])[] = [
  ["triangle", say.cornersDishes, ""],
  ["triangle:fingertips", say.cornersTips, say.cornersNoTips],
  ["triangle:accents", say.cornersAccents, say.cornersNoAccents],
];

function Corners({ of }: { of: string }): JSX.Element {
  const keys = state.report.value?.findings.map(({ key }) => key) ?? [];
  const there = CORNERS.filter(([key]) => keys.includes(key));
  const missing = CORNERS.filter(([key, , none]) => none !== "" && !keys.includes(key));
  return (
    <>
      <Choice
        name={say.corners}
        options={there.map(([key, word]) => [key, word] as const)}
        value={of}
        choose={(key) => (state.openFinding.value = key)}
      />
      {missing.map(([key, , none]) => (
        <p key={key} class="was">
          {none}
        </p>
      ))}
    </>
  );
}

function Working({ finding }: { finding: Finding }): JSX.Element {
  return (
    <section class="working" aria-label={say.workingTitle}>
      {finding.reading === "triangle" ? <Corners of={finding.key} /> : null}
      <h3>{say.workingTitle}</h3>
      <ul>
        {finding.working.map((line) => (
          <li key={line}>{line}</li>
        ))}
        <li>{GRADES[finding.grade] ?? finding.grade}</li>
      </ul>
      {finding.state === "look-again" ? (
        <button class="word" onClick={() => act.accept(finding)}>
          {say.meanIt}
        </button>
      ) : null}
    </section>
  );
}

/** What the drag in hand changes, better or worse, and nothing else. */
function Changes({ live }: { live: Live }): JSX.Element {
  if (live.changes.length === 0) return <p class="was">{say.moveChangesNothing}</p>;
  return (
    <ul>
      {live.changes.slice(0, MOST).map(({ key, sentence, better }) => (
        <li key={key} class={better ? "find change up" : "find change down"}>
          <span class="sans">{better ? say.better : say.worse}</span>
          <p>{sentence}</p>
        </li>
      ))}
    </ul>
  );
}

export function Findings(): JSX.Element {
  const live = state.live.value;
  if (live !== undefined) {
    return (
      <section aria-label={say.moveChanges}>
        <Changes live={live} />
      </section>
    );
  }
  const all = state.report.value?.findings ?? [];
  const pressing = all.filter(({ state: is, taste }) => !taste && (is === "wont-work" || is === "look-again"));
  const asked = all.find(({ key }) => key === state.openFinding.value);
  const shown = pressing.slice(0, MOST);
  if (asked !== undefined && !shown.includes(asked)) shown.push(asked);
  const notes = pressing.filter((finding) => !shown.includes(finding));
  const others = all.filter((finding) => !shown.includes(finding) && !notes.includes(finding));
  const open = state.allNotes.value;
  return (
    <section aria-label={say.findings}>
      {shown.length === 0 && state.report.value !== undefined ? <p class="was">{say.noFindings}</p> : null}
      <ul>
        {shown.map((finding) => (
          <One key={finding.key} finding={finding} />
        ))}
        {open ? notes.map((finding) => <One key={finding.key} finding={finding} />) : null}
      </ul>
      {open && others.length > 0 ? (
        <>
          <h3>{say.notesRest}</h3>
          <ul>
            {others.map((finding) => (
              <One key={finding.key} finding={finding} />
            ))}
          </ul>
        </>
      ) : null}
      {notes.length + others.length > 0 ? (
        <button
          class="quiet"
          aria-expanded={open}
          onClick={() => (state.allNotes.value = !open)}
        >
          {open ? say.notesFewer : notes.length > 0 ? say.notesMore({ count: notes.length }) : say.notesRest}
        </button>
      ) : null}
    </section>
  );
}
