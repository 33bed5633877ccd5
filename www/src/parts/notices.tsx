// What went wrong, that another tab is writing, that a newer page lies ready.

import type { JSX } from "preact";
import * as say from "#words";

import * as state from "../state";

/** A fault: what happened, then, a line each, what is wrong. */
function Fault({ text }: { text: string }): JSX.Element {
  const [first, ...lines] = text.split("\n");
  return (
    <div role="alert">
      <p>{first}</p>
      {lines.length === 0 ? null : (
        <ul class="problems sans">
          {lines.map((line, place) => (
            <li key={place}>{line}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

export function Notices(): JSX.Element | null {
  const fault = state.fault.value;
  const newer = state.newer.value;
  if (fault === "" && newer === undefined && !state.readOnly.value) return null;
  return (
    <div class="notice">
      {state.readOnly.value ? <p>{state.fromNewer.value ? say.newerFile : say.onlyShown}</p> : null}
      {fault === "" ? null : (
        <>
          <Fault text={fault} />
          <button class="word" onClick={() => (state.fault.value = "")}>
            {say.understood}
          </button>
        </>
      )}
      {newer === undefined ? null : (
        <>
          <p>{say.newerPageReady}</p>
          <button class="word" data-act="update" onClick={newer}>
            {say.useNewerPage}
          </button>
        </>
      )}
    </div>
  );
}
