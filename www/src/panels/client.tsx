// The client's view of a link: the picture, its crops, the list, one reply.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";

import type { Layout } from "../core";
import { shareOrCopy } from "../export";
import { Choice } from "../parts/controls";
import * as session from "../session";
import * as state from "../state";
import { Kept } from "./crops";
import { freshId } from "./yours";

const ANSWERS = [
  ["yes", "yes"],
  ["yes with changes", "yes with changes"],
  ["no", "no"],
] as const;

function version(layout: Layout): string {
  const { number, date } = layout.revision;
  const parts = number > 0 ? [`version ${number}`] : [];
  if (date !== "") {
    parts.push(new Date(`${date}T12:00`).toLocaleDateString(undefined, { day: "numeric", month: "long" }));
  }
  if (layout.client) parts.push(layout.client);
  return parts.join(" · ");
}

function Reply({ layout }: { layout: Layout }): JSX.Element {
  const open = useSignal(false);
  const answer = useSignal<(typeof ANSWERS)[number][0]>("yes");
  const remarks = useSignal("");
  const told = useSignal("");
  const text = (): string =>
    [
      `${layout.title}, ${version(layout)}`,
      `Answer: ${answer.value}`,
      ...(remarks.value.trim() === "" ? [] : [remarks.value.trim()]),
    ].join("\n");
  const send = (): void =>
    void shareOrCopy({ title: layout.title, text: text() })
      .then((sent) => (told.value = sent === "copied" ? "Copied: paste it into your chat or mail." : ""))
      .catch((error: unknown) => (told.value = `Not sent: ${session.message(error)}. Select the words above and copy them.`));
  if (!open.value) {
    return (
      <button class="solid" onClick={() => (open.value = true)}>
        Reply
      </button>
    );
  }
  return (
    <section class="panel" aria-label="Reply">
      <Choice name="Your answer" options={ANSWERS} value={answer.value} choose={(each) => (answer.value = each)} />
      <label class="field">
        <span>Remarks, by number if you like (“2: less oil”)</span>
        <textarea class="long" value={remarks.value} onInput={(event) => (remarks.value = event.currentTarget.value)} />
      </label>
      <button class="solid" onClick={send}>
        Send this reply
      </button>
      <p role="status" class="sans">
        {told.value}
      </p>
    </section>
  );
}

export function Client({ layout }: { layout: Layout }): JSX.Element {
  const numbered = state.things.value.filter((thing) => thing.number !== "");
  const keepCopy = async (): Promise<void> => {
    await session.keepCopy(freshId());
    history.replaceState(null, "", location.pathname);
    state.stage.value = "work";
  };
  return (
    <main class="client sheet">
      <header class="head">
        <h1>{layout.title || "A laid table"}</h1>
        <p class="quiet">{version(layout)}</p>
      </header>
      <div class="flick" tabIndex={0} role="group" aria-label="The picture and its crops">
        <figure>
          <Kept layout={layout} crop={0} name="whole picture" />
          <figcaption>whole picture</figcaption>
        </figure>
        {layout.crops.map((crop) => (
          <figure key={crop.id}>
            <Kept layout={layout} crop={crop.id} name={crop.name} />
            <figcaption>{crop.name}</figcaption>
          </figure>
        ))}
      </div>
      <section class="say">
        <ol class="list" aria-label="What is in the picture">
          {numbered.map((thing) => (
            <li key={thing.id}>
              <b>{thing.number}</b>
              <span>
                {thing.name}
                {thing.role === "hero" ? ": the hero" : ""}
              </span>
            </li>
          ))}
        </ol>
        <p class="caution">
          A proposal drawn to size. Heights, flames, glass, heat and food are for the set, under
          local rules and qualified people.
        </p>
        <div class="last panel">
          <Reply layout={layout} />
          <button class="word quiet" onClick={() => void keepCopy()}>
            Open a copy in the planner
          </button>
        </div>
      </section>
    </main>
  );
}
