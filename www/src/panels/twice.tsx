// Places one prop can dress in two exposures, listed when they are asked for.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import * as say from "#words";

import type { Id, Layout } from "../core";
import * as session from "../session";
import * as state from "../state";

/** Pairs shown at once. */
const FIRST = 12;

function Pairs({ layout }: { layout: Layout }): JSX.Element {
  const shown = useSignal(FIRST);
  const pairs = useMemo(
    () => session.core().twice() as { things: Id[]; costs: number; told: string }[],
    [layout],
  );
  const free = pairs.filter(({ costs }) => costs === 0).length;
  const more = pairs.length - shown.value;
  if (pairs.length === 0) return <p>{say.twiceNone}</p>;
  return (
    <>
      <p>{say.twiceFound({ free: String(free), more: String(pairs.length - free) })}</p>
      <ul class="list listed" aria-label={say.twice}>
        {pairs.slice(0, shown.value).map(({ things, told }) => (
          <li key={things.join(" ")}>
            {told}{" "}
            <button
              class="word"
              onClick={() => {
                session.choose(undefined);
                state.picked.value = things;
                document.querySelector(".picture")?.scrollIntoView({ block: "start" });
              }}
            >
              {say.twiceShow}
            </button>
          </li>
        ))}
      </ul>
      {more > 0 ? (
        <button class="word" onClick={() => (shown.value = pairs.length)}>
          {say.addMore({ count: more })}
        </button>
      ) : null}
    </>
  );
}

export function TwicePart({ layout }: { layout: Layout }): JSX.Element {
  const open = useSignal(false);
  return (
    <details class="panel" onToggle={(event) => (open.value = event.currentTarget.open)}>
      <summary>{say.twice}</summary>
      {open.value ? (
        <div class="panel">
          <p class="quiet">{say.twiceWhat}</p>
          <Pairs layout={layout} />
        </div>
      ) : null}
    </details>
  );
}
