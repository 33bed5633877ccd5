// Two layouts beside each other: their pictures under one window, what changed
// by number, the findings and scores of both.

import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { JSX } from "preact";
import * as say from "#words";

import type { Change, Compared } from "../asked";
import * as beside from "../beside";
import type { Side } from "../beside";
import { Both } from "../both";
import { PARTS, Way } from "../parts/scores";
import { Ways } from "../parts/ways";

function Pictures({ sides }: { sides: readonly [Side, Side] }): JSX.Element {
  const row = useRef<HTMLDivElement>(null);
  const both = useRef<Both | undefined>(undefined);
  const enlarged = useSignal(false);
  useEffect(() => {
    const boxes = [...(row.current?.querySelectorAll<HTMLElement>(".picture") ?? [])];
    both.current = new Both(boxes, sides.map(({ file }) => file), (is) => (enlarged.value = is));
    return () => both.current?.free();
  }, [sides]);
  const marked = beside.marked.value;
  useEffect(() => both.current?.mark(marked), [marked]);
  return (
    <div class="two" ref={row}>
      {sides.map(({ name }, place) => (
        <figure key={place}>
          <figcaption>
            <b class="sans">{place + 1}</b> {name}
          </figcaption>
          <div class="picture" tabIndex={0} role="group" aria-label={say.twoPicture({ name })}>
            <svg aria-hidden="true">
              <g />
            </svg>
            <svg aria-hidden="true">
              <g />
            </svg>
            {place === 1 ? <Ways view={() => both.current?.view} enlarged={enlarged.value} /> : null}
          </div>
        </figure>
      ))}
    </div>
  );
}

/** What changed; a tap marks it in both pictures. */
export function Changes({ changes }: { changes: Change[] }): JSX.Element {
  const { marked } = beside;
  if (changes.length === 0) return <p class="quiet">{say.twoNone}</p>;
  return (
    <ol class="list changes">
      {changes.map((change, place) => (
        <li key={place}>
          <button
            aria-pressed={marked.value === change}
            onClick={() => (marked.value = marked.value === change ? undefined : change)}
          >
            {change.sentence}
          </button>
        </li>
      ))}
    </ol>
  );
}

function Scores({ scores: [before, after] }: { scores: Compared["findings"]["scores"] }): JSX.Element | null {
  if (before === null || after === null) return null;
  return (
    <div class="scores sans" role="group" aria-label={say.scores}>
      {PARTS.map(([part, name]) => {
        const [then, now] = [before[part], after[part]];
        if (then === null || now === null) return null;
        const said = { before: String(Math.round(then)), after: String(Math.round(now)) };
        return (
          <span key={part}>
            {name} <b>{say.twoScore(said)}</b> <Way from={then} to={now} />
          </span>
        );
      })}
    </div>
  );
}

function Findings({ findings, sides }: { findings: Compared["findings"]; sides: readonly [Side, Side] }): JSX.Element {
  const { before, after, both } = findings;
  const changed = both.filter(({ better }) => better !== null);
  const rest = both.filter(({ better }) => better === null);
  const named = sides[0].name === sides[1].name ? ["1", "2"] : sides.map(({ name }) => name);
  if (before.length + after.length + both.length === 0) return <p class="quiet">{say.twoFree}</p>;
  return (
    <>
      {[before, after].map((own, place) =>
        own.length === 0 ? null : (
          <section key={place}>
            <h4>{say.twoOnly({ name: named[place] ?? "" })}</h4>
            <ul class="list">
              {own.map(({ key, sentence }) => (
                <li key={key}>{sentence}</li>
              ))}
            </ul>
          </section>
        ),
      )}
      {changed.length === 0 ? null : (
        <section>
          <h4>{say.twoBoth}</h4>
          <ul>
            {changed.map(({ key, sentences: [then, now], better }) => (
              <li key={key} class={better === true ? "find change up" : "find change down"}>
                <span class="sans">{better === true ? say.better : say.worse}</span>
                <div>
                  <p>{now}</p>
                  {then === now ? null : <p class="quiet">{say.twoBefore({ sentence: then })}</p>}
                </div>
              </li>
            ))}
          </ul>
        </section>
      )}
      {rest.length === 0 ? null : (
        <details>
          <summary>{say.twoAsBefore({ count: rest.length })}</summary>
          <ul class="list">
            {rest.map(({ key, sentences: [, now] }) => (
              <li key={key}>{now}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

export function Beside({ sides }: { sides: readonly [Side, Side] }): JSX.Element {
  const told = beside.told.value;
  return (
    <main class="beside sheet">
      <header class="head">
        <h1>{say.two}</h1>
        <button class="word" onClick={beside.close}>
          {say.twoBack}
        </button>
      </header>
      <Pictures sides={sides} />
      <section class="say" tabIndex={0} aria-label={say.two}>
        {told === undefined ? (
          <p role="status">{beside.fault.value || say.twoReading}</p>
        ) : (
          <>
            <Scores scores={told.findings.scores} />
            <section aria-label={say.twoChanges}>
              <h2>{say.twoChanges}</h2>
              {told.versions ? (
                <Changes changes={told.changes} />
              ) : (
                <p class="quiet">{say.twoOwn}</p>
              )}
            </section>
            <section aria-label={say.twoFindings}>
              <h2>{say.twoFindings}</h2>
              <Findings findings={told.findings} sides={sides} />
            </section>
          </>
        )}
      </section>
    </main>
  );
}
