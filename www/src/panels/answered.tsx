// What a client answered: an answer that came, and the remarks on the table.

import { useSignal } from "@preact/signals";
import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import type { JSX } from "preact";
import * as say from "#words";

import { act } from "../acts";
import * as answers from "../answers";
import type { Change, ComparedAnswer } from "../asked";
import type { Layout, ToldRemark } from "../core";
import * as session from "../session";
import * as spare from "../spare";
import * as state from "../state";
import * as versions from "../versions";
import { day } from "./client";

/** Which version it answers, beside the one the table is at. */
function which(read: answers.Read, layout: Layout): string {
  if (!read.open) return say.answerElsewhere;
  const [version, now] = [String(read.said.version), String(layout.revision.number)];
  if (read.said.version === layout.revision.number) return say.answerNow({ version });
  const sent = read.said.version < layout.revision.number ? say.answerOlder : say.answerUnsent;
  return sent({ version, now });
}

/** What changed on the table since a version, where that is kept. */
function Since({ number, layout }: { number: number; layout: Layout }): JSX.Element | null {
  const told = useSignal<Change[] | undefined>(undefined);
  const fault = useSignal("");
  const before = versions.sent(number)?.file;
  useEffect(() => {
    [told.value, fault.value] = [undefined, ""];
    if (before === undefined) return undefined;
    const fell = (why: string): void => void (fault.value = say.twoNotRead({ why }));
    return spare.ask(
      { ask: "compare", before, after: session.core().save_json() },
      (answer: ComparedAnswer) => {
        if ("fault" in answer) fell(answer.fault);
        else told.value = answer.compared.changes;
      },
      fell,
    );
  }, [before, layout]);
  if (number === 0) return null;
  const version = String(number);
  if (before === undefined) return <p class="quiet">{say.answerSinceUnkept({ version })}</p>;
  return (
    <section aria-label={say.answerSince({ version })}>
      <h4>{say.answerSince({ version })}</h4>
      {told.value === undefined ? (
        <p role="status">{fault.value || say.twoReading}</p>
      ) : told.value.length === 0 ? (
        <p class="quiet">{say.twoNone}</p>
      ) : (
        <ul class="list changed">
          {told.value.map(({ sentence }, place) => (
            <li key={place}>{sentence}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Said({ remarks }: { remarks: ToldRemark[] }): JSX.Element {
  if (remarks.length === 0) return <p class="quiet">{say.answerNone}</p>;
  return (
    <ol class="list remarks" aria-label={say.remarks}>
      {remarks.map(({ number, about, text }) => (
        <li key={number}>
          <b class="note">{number}</b>
          <div>
            <p class="quiet">{about}</p>
            <p>{text}</p>
          </div>
        </li>
      ))}
    </ol>
  );
}

/** An answer that came. */
export function Arrived({ layout }: { layout: Layout }): JSX.Element | null {
  const payload = answers.arrived.value;
  const panel = useRef<HTMLElement>(null);
  useEffect(() => panel.current?.scrollIntoView({ block: "start" }), [payload]);
  const read = payload === undefined ? undefined : answers.read(payload);
  if (payload === undefined || read === undefined) return null;
  const { said } = read;
  return (
    <section class="panel arrived" aria-label={say.answer} ref={panel}>
      <h3>{read.says}</h3>
      <p class="quiet">
        {[said.given, said.date].filter((each) => each).slice(0, 1).map((each) => day(each ?? ""))}
      </p>
      <p>{which(read, layout)}</p>
      {said.choice ? <p>{say.answerChoice({ choice: said.choice })}</p> : null}
      <Said remarks={read.remarks} />
      {read.left > 0 ? <p>{say.answerTooMany({ count: read.left })}</p> : null}
      {read.open ? <Since number={said.version} layout={layout} /> : null}
      {read.open && read.taken ? <p role="status">{say.answerTakenAlready}</p> : null}
      <div class="steps">
        {read.open && !read.taken ? (
          <button class="tape" onClick={() => void answers.take(payload)}>
            {say.answerTake}
          </button>
        ) : null}
        <button class="word" onClick={() => (answers.arrived.value = undefined)}>
          {say.answerLater}
        </button>
        <button class="word" onClick={() => void answers.away(payload)}>
          {say.answerThrow}
        </button>
      </div>
    </section>
  );
}

/** Answers kept to be read. */
export function KeptAnswers(): JSX.Element | null {
  useEffect(() => void answers.list(), []);
  if (answers.kept.value.length === 0) return null;
  return (
    <section class="panel" aria-label={say.answersKept}>
      <h3>{say.answersKept}</h3>
      {answers.kept.value.map(({ key, changed, text }) => (
        <button class="word" key={key} onClick={() => void answers.look(text)}>
          {say.answerRead({ when: day(changed) })}
        </button>
      ))}
    </section>
  );
}

/** The remarks on the table, with ticks. */
export function Remarks({ layout }: { layout: Layout }): JSX.Element | null {
  const shown = useSignal(true);
  const any = (layout.remarks ?? []).length > 0;
  const notes = any && shown.value;
  useLayoutEffect(() => {
    state.noted.value = notes;
    return () => void (state.noted.value = false);
  }, [notes]);
  const { answer } = layout.revision;
  useEffect(() => void versions.list(), [layout.id]);
  if (!any && answer === undefined) return null;
  const told = session.core().remarks() as ToldRemark[];
  const choose = (place: number): void => {
    const thing = layout.remarks?.[place]?.thing;
    if (thing !== undefined && session.core().has(thing)) session.choose(thing, true);
  };
  return (
    <section class="panel" aria-label={say.remarks}>
      <h3>{say.remarks}</h3>
      <p>{session.core().answered()}</p>
      {answer?.choice ? <p>{say.answerChoice({ choice: answer.choice })}</p> : null}
      {any ? (
        <label class="tick">
          <input
            type="checkbox"
            checked={shown.value}
            onChange={(event) => (shown.value = event.currentTarget.checked)}
          />
          <span>{say.remarkShow}</span>
        </label>
      ) : null}
      <ol class="list remarks" aria-label={say.remarks}>
        {told.map(({ number, about, text, done }, place) => (
          <li key={number} class={done ? "seen" : ""}>
            <b class="note">{number}</b>
            <div>
              <button class="about quiet" onClick={() => choose(place)}>
                {about}
              </button>
              <p>{text}</p>
              <div class="steps">
                <label class="tick">
                  <input
                    type="checkbox"
                    aria-label={say.remarkTick({ number: String(number) })}
                    checked={done}
                    disabled={state.readOnly.value}
                    onChange={() => act.remark(place, { done: !done })}
                  />
                  <span aria-hidden="true">{say.remarkDone}</span>
                </label>
                <button
                  class="word"
                  aria-label={say.remarkDelete({ number: String(number) })}
                  onClick={() => act.remarkGone(place)}
                >
                  {say.remarkDeleteShort}
                </button>
              </div>
            </div>
          </li>
        ))}
      </ol>
      {answer === undefined ? null : <Since number={answer.version} layout={layout} />}
    </section>
  );
}
