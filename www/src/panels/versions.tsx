// Versions of the open table: kept, compared, gone back to, deleted; and any
// two of what is kept here beside each other.

import { useSignal } from "@preact/signals";
import { useEffect, useLayoutEffect } from "preact/hooks";
import type { JSX } from "preact";
import * as say from "#words";

import * as beside from "../beside";
import type { Layout } from "../core";
import * as shelf from "../kept";
import * as session from "../session";
import * as state from "../state";
import { MOST_VERSIONS, type Version } from "../store";
import * as versions from "../versions";
import { when } from "./shelf";

const now = (): beside.Side => ({ name: say.versionNow, file: session.core().save_json() });

function One({ version, remove }: { version: Version; remove: () => void }): JSX.Element {
  const { name, file, made } = version;
  return (
    <li>
      <p class="kept">
        <span>{name}</span>
        <small class="sans">{when(made)}</small>
      </p>
      <div class="steps">
        <button
          class="word"
          aria-label={say.versionCompare({ name })}
          onClick={() => beside.show({ name, file }, now())}
        >
          {say.versionCompareShort}
        </button>
        <button
          class="word"
          aria-label={say.versionBack({ name })}
          onClick={() => void versions.goBack(version)}
        >
          {say.versionBackShort}
        </button>
        <button class="word" aria-label={say.versionDelete({ name })} onClick={remove}>
          {say.keptDeleteShort}
        </button>
      </div>
    </li>
  );
}

/** What can be put beside something else: the table now, its versions, and other layouts. */
interface Choice {
  value: string;
  name: string;
  file: () => Promise<string | undefined>;
}

function choices(): Choice[] {
  const open = state.layout.value?.id;
  return [
    { value: "now", name: say.versionNow, file: () => Promise.resolve(now().file) },
    ...versions.all.value.map(({ name, made, file }) => {
      return { value: `version ${made}`, name, file: () => Promise.resolve(file) };
    }),
    ...state.kept.value
      .filter(({ id }) => id !== open)
      .map(({ id, title }) => {
        return { value: id, name: title || say.keptUntitled, file: () => shelf.wholeOf(id) };
      }),
  ];
}

function Two(): JSX.Element | null {
  const all = choices();
  const chosen = useSignal<[string, string]>(["", ""]);
  if (all.length < 2) return null;
  const pick = (value: string, otherwise: number): Choice | undefined =>
    all.find((each) => each.value === value) ?? all[otherwise];
  // At first the last version and the table as it is now.
  const both = [pick(chosen.value[0], 1), pick(chosen.value[1], 0)] as const;
  const choose = (place: 0 | 1, value: string): void => {
    const next: [string, string] = [both[0]?.value ?? "", both[1]?.value ?? ""];
    next[place] = value;
    chosen.value = next;
  };
  const show = async (): Promise<void> => {
    const [one, other] = both;
    await session.settled();
    const files = [await one?.file(), await other?.file()];
    const [before, after] = files;
    if (one === undefined || other === undefined || before === undefined || after === undefined) return;
    beside.show({ name: one.name, file: before }, { name: other.name, file: after });
  };
  return (
    <details class="two-of">
      <summary>{say.twoChoose}</summary>
      {([say.twoFirst, say.twoSecond] as const).map((name, place) => (
        <label class="field" key={name}>
          <span>{name}</span>
          <select
            value={both[place]?.value}
            onChange={(event) => choose(place as 0 | 1, event.currentTarget.value)}
          >
            {all.map((each) => (
              <option key={each.value} value={each.value}>
                {each.name}
              </option>
            ))}
          </select>
        </label>
      ))}
      <button class="tape" onClick={() => void show()}>
        {say.twoShow}
      </button>
    </details>
  );
}

export function Versions({ layout }: { layout: Layout }): JSX.Element {
  const name = useSignal("");
  const told = useSignal("");
  const gone = useSignal<Version | undefined>(undefined);
  const { id } = layout;
  // Before anything can be written.
  useLayoutEffect(() => void ([name.value, told.value, gone.value] = ["", "", undefined]), [id]);
  useEffect(() => void versions.list(), [id]);
  const keep = async (): Promise<void> => {
    const kept = await versions.keep(name.value);
    if (kept === undefined) return;
    [name.value, told.value] = ["", say.versionKept({ name: kept })];
  };
  const remove = async (version: Version): Promise<void> => {
    if (await versions.remove(version)) [gone.value, told.value] = [version, ""];
  };
  const full = versions.all.value.length >= MOST_VERSIONS;
  return (
    <section class="panel" aria-label={say.versions}>
      <h3>{say.versions}</h3>
      <p class="quiet">{say.versionsWhat}</p>
      {state.readOnly.value ? (
        <p class="quiet">{state.fromNewer.value ? say.versionsNewer : say.onlyShown}</p>
      ) : full ? (
        <p>{say.versionsFull({ count: String(MOST_VERSIONS) })}</p>
      ) : (
        <form
          class="two-of"
          onSubmit={(event) => {
            event.preventDefault();
            void keep();
          }}
        >
          <label class="field">
            <span>{say.versionName}</span>
            <input
              value={name.value}
              maxLength={say.MAX_NAME}
              placeholder={say.versionNumber({ number: String(versions.all.value.length + 1) })}
              onInput={(event) => (name.value = event.currentTarget.value)}
            />
          </label>
          <button class="tape">{say.versionKeep}</button>
        </form>
      )}
      <p role="status">{told.value}</p>
      <ul class="list shelf versions" aria-label={say.versions}>
        {versions.all.value.map((version) => (
          <One key={version.made} version={version} remove={() => void remove(version)} />
        ))}
      </ul>
      {gone.value === undefined ? null : (
        <p class="line" role="status">
          <span>{say.versionDeleted({ name: gone.value.name })}</span>
          <button
            class="word"
            onClick={() => {
              const back = gone.value;
              gone.value = undefined;
              if (back !== undefined) void versions.putBack(back);
            }}
          >
            {say.keptPutBack}
          </button>
        </p>
      )}
      <Two />
    </section>
  );
}
