// A client's reply: remarks on the picture, an answer, and both as text and link.

import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { JSX } from "preact";
import * as say from "#words";

import type { Layout, Pair, Remark } from "../core";
import { shareOrCopy, type Sent } from "../export";
import { Choice } from "../parts/controls";
import * as offered from "../offered";
import * as reply from "../reply";
import * as session from "../session";
import { version } from "./client";

const ANSWERS = [
  ["yes", say.replyYes],
  ["changes", say.replyChanges],
  ["no", say.replyNo],
] as const;
/** Steps a place moves by, and which way. */
const WAYS: readonly (readonly [string, Pair])[] = [
  [say.remarkLeft, [-1, 0]],
  [say.remarkRight, [1, 0]],
  [say.remarkUp, [0, -1]],
  [say.remarkDown, [0, 1]],
];
const STEP_MM = 25;

/** Moves a bare place by steps. */
function Move({ place, at }: { place: number; at: Pair }): JSX.Element {
  return (
    <div class="steps" role="group" aria-label={say.remarkMove}>
      {WAYS.map(([name, [dx, dy]]) => (
        <button
          type="button"
          key={name}
          onClick={() => reply.amend(place, { at: [at[0] + dx * STEP_MM, at[1] + dy * STEP_MM] })}
        >
          {name}
        </button>
      ))}
    </div>
  );
}

function Writing({ place, remark }: { place: number; remark: Remark }): JSX.Element {
  const field = useRef<HTMLTextAreaElement>(null);
  useEffect(() => {
    field.current?.focus();
    field.current?.scrollIntoView({ block: "center" });
  }, [place]);
  return (
    <form
      class="writing"
      onSubmit={(event) => {
        event.preventDefault();
        reply.written();
      }}
    >
      {remark.at === undefined ? null : <Move place={place} at={remark.at} />}
      <label class="field">
        <span>{say.remarkText}</span>
        <textarea
          ref={field}
          rows={2}
          maxLength={say.MAX_REMARK}
          value={remark.text}
          onInput={(event) => reply.amend(place, { text: event.currentTarget.value })}
        />
      </label>
      <button class="tape">{say.remarkDone}</button>
    </form>
  );
}

/** The remarks, one of them being written. */
function Remarks(): JSX.Element {
  const gone = useSignal<Remark | undefined>(undefined);
  const { remarks } = reply.draft.value;
  const back = (): void => {
    if (gone.value !== undefined) reply.change({ remarks: [...reply.draft.value.remarks, gone.value] });
    gone.value = undefined;
  };
  return (
    <>
      <ol class="list remarks" aria-label={say.remarks}>
        {remarks.map((remark, place) => {
          const told = reply.told.value[place];
          const number = String(place + 1);
          return (
            <li key={place}>
              <b class="note">{number}</b>
              <div>
                <p class="quiet">{told?.about}</p>
                {reply.writing.value === place ? (
                  <Writing place={place} remark={remark} />
                ) : (
                  <>
                    <p>{remark.text}</p>
                    <div class="steps">
                      <button
                        class="word"
                        aria-label={say.remarkEdit({ number })}
                        onClick={() => (reply.writing.value = place)}
                      >
                        {say.remarkEditShort}
                      </button>
                      <button
                        class="word"
                        aria-label={say.remarkDelete({ number })}
                        onClick={() => (gone.value = reply.remove(place))}
                      >
                        {say.remarkDeleteShort}
                      </button>
                    </div>
                  </>
                )}
              </div>
            </li>
          );
        })}
      </ol>
      {gone.value === undefined ? null : (
        <p class="line" role="status">
          <span>{say.remarkDeleted}</span>
          <button class="word" onClick={back}>
            {say.remarkPutBack}
          </button>
        </p>
      )}
      {remarks.length < say.MAX_SENT ? null : <p>{say.remarksFull({ count: String(say.MAX_SENT) })}</p>}
    </>
  );
}

/** What is sent: words a chat can carry, and the link. */
function spoken(layout: Layout, address: string): string {
  const { verdict, by, choice, remarks } = reply.draft.value;
  const head = version(layout);
  const answer = ANSWERS.find(([value]) => value === (verdict ?? "yes"))?.[1] ?? "";
  const chosen = offered.two.value?.names[choice ?? offered.shown.value];
  const line = (text: string, place: number): string => {
    const about = reply.told.value[place]?.about ?? "";
    return say.replyLine({ number: String(place + 1), about, text });
  };
  return [
    head === "" ? layout.title : say.replyHead({ title: layout.title, version: head }),
    ...(chosen === undefined ? [] : [say.replyOf({ name: chosen })]),
    say.replySays({ answer }),
    ...remarks.map(({ text }, place) => line(text.trim(), place)),
    ...(by.trim() === "" ? [] : [say.replyFrom({ name: by.trim() })]),
    address,
  ].join("\n");
}

export function Reply({ layout }: { layout: Layout }): JSX.Element {
  const told = useSignal("");
  const field = useRef<HTMLTextAreaElement>(null);
  const link = useRef<HTMLInputElement>(null);
  if (!reply.open.value) {
    return (
      <button class="solid" onClick={() => (reply.open.value = true)}>
        {say.reply}
      </button>
    );
  }
  const { verdict, by, choice } = reply.draft.value;
  const two = offered.two.value;
  const payload = session.core().answer_link({
    verdict: verdict ?? "yes",
    choice: two?.names[choice ?? offered.shown.value] ?? "",
    by,
    given: new Date().toISOString().slice(0, 10),
  });
  const address = `${location.href.split("#")[0] ?? ""}#${payload}`;
  const text = spoken(layout, address);
  const tell = (sent: Sent): void => {
    told.value = sent === "copied" ? say.replyCopied : sent === "shared" ? say.replyShared : "";
  };
  const send = (data: { text?: string; url?: string }, shown: HTMLTextAreaElement | HTMLInputElement | null): void =>
    void shareOrCopy({ title: layout.title, ...data })
      .then(tell)
      .catch((error: unknown) => {
        // A browser within a chat may allow neither: what is marked can be copied by hand.
        shown?.focus();
        shown?.select();
        told.value = say.replyNotSent({ why: session.message(error) });
      });
  return (
    <section class="panel reply" aria-label={say.reply}>
      <Remarks />
      <button
        class="word"
        onClick={() => reply.begun({ at: layout.frame.at })}
      >
        {say.remarkOfPlace}
      </button>
      {two === undefined ? null : (
        <Choice
          name={say.replyChoice}
          options={two.names.map((name, place) => [String(place), name] as const)}
          value={String(choice ?? offered.shown.value)}
          choose={(place) => reply.change({ choice: place === "0" ? 0 : 1 })}
        />
      )}
      <Choice
        name={say.replyAnswer}
        options={ANSWERS}
        value={verdict ?? "yes"}
        choose={(each) => reply.change({ verdict: each })}
      />
      <label class="field">
        <span>{say.replyBy}</span>
        <input
          value={by}
          maxLength={say.MAX_NAME}
          autocomplete="name"
          onInput={(event) => reply.change({ by: event.currentTarget.value })}
        />
      </label>
      <p class="quiet">
        {reply.unkept.value === "" ? say.replyHere : say.replyUnkept({ why: reply.unkept.value })}
      </p>
      <label class="field">
        <span>{say.replyText}</span>
        <textarea class="sent" ref={field} readOnly rows={Math.min(12, text.split("\n").length + 2)} value={text} />
      </label>
      <button class="solid" onClick={() => send({ text }, field.current)}>
        {say.replySend}
      </button>
      <label class="field">
        <span>{say.replyLink}</span>
        <input class="link" ref={link} readOnly value={address} onFocus={(e) => e.currentTarget.select()} />
      </label>
      <button class="word" onClick={() => send({ url: address }, link.current)}>
        {say.replySendLink}
      </button>
      <p role="status">{told.value}</p>
    </section>
  );
}
