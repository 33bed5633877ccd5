// What went wrong, what was set aside, that another tab is writing, that a newer
// page lies ready.

import type { JSX } from "preact";
import * as say from "#words";

import { hand } from "../export";
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
  const aside = state.aside.value;
  if (fault === "" && newer === undefined && aside === undefined && !state.readOnly.value) return null;
  const shown = state.stage.value === "client" ? say.newerLink : say.newerFile;
  return (
    <div class="notice">
      {state.readOnly.value ? <p>{state.fromNewer.value ? shown : say.onlyShown}</p> : null}
      {aside === undefined ? null : (
        <>
          <Fault text={aside.why} />
          <button
            class="word"
            onClick={() => hand(new File([aside.text], `${aside.title}.json`, { type: "application/json" }))}
          >
            {say.asideSave}
          </button>
          <button class="word" onClick={() => (state.aside.value = undefined)}>
            {say.understood}
          </button>
        </>
      )}
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
