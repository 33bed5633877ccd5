// The layouts kept on this device: opened, renamed, deleted and put back.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import * as say from "#words";

import { Field } from "../parts/controls";
import * as shelf from "../kept";
import * as resume from "../resume";
import * as session from "../session";
import * as state from "../state";
import type { Kept } from "../store";
import { day } from "./client";

/** When something was kept, as the page's own words speak. */
export function when(changed: number): string {
  const at = new Date(changed);
  const [hour, minute] = [at.getHours(), at.getMinutes()].map((part) => String(part).padStart(2, "0"));
  return `${day(changed)}, ${hour}:${minute}`;
}

function One({ kept, remove }: { kept: Kept; remove: () => void }): JSX.Element {
  const naming = useSignal(false);
  const title = kept.title || say.keptUntitled;
  const open = kept.id === state.layout.value?.id;
  return (
    <li>
      <button
        class="kept"
        aria-current={open ? "true" : undefined}
        onClick={() => void session.settled().then(() => resume.open(kept.id))}
      >
        <span>{title}</span>
        <small class="sans">{open ? say.keptOpen : when(kept.changed)}</small>
      </button>
      {open ? null : (
        <div class="steps">
          <button
            class="word"
            aria-label={say.keptRename({ title })}
            aria-expanded={naming.value}
            onClick={() => (naming.value = !naming.value)}
          >
            {say.keptRenameShort}
          </button>
          <button class="word" aria-label={say.keptDelete({ title })} onClick={remove}>
            {say.keptDeleteShort}
          </button>
        </div>
      )}
      {naming.value ? (
        <Field
          name={say.title}
          value={kept.title}
          take={(value) => {
            naming.value = false;
            void shelf.renameKept(kept.id, value);
          }}
        />
      ) : null}
    </li>
  );
}

export function Shelf(): JSX.Element {
  const gone = useSignal<shelf.Removed | undefined>(undefined);
  const phone = matchMedia("(pointer: coarse)").matches;
  const name = phone ? say.keptPhone : say.keptComputer;
  return (
    <section class="panel" aria-label={name}>
      <h3>{name}</h3>
      {state.kept.value.length === 0 ? <p class="quiet">{say.keptNone}</p> : null}
      <ul class="list shelf">
        {state.kept.value.map((kept) => (
          <One
            key={kept.id}
            kept={kept}
            remove={() =>
              void shelf.removeKept(kept.id).then((whole) => (gone.value = whole))
            }
          />
        ))}
      </ul>
      {gone.value === undefined ? null : (
        <p class="line" role="status">
          <span>{say.keptDeleted({ title: gone.value.kept.title || say.keptUntitled })}</span>
          <button
            class="word"
            onClick={() => {
              const back = gone.value;
              gone.value = undefined;
              if (back !== undefined) void shelf.putBack(back);
            }}
          >
            {say.keptPutBack}
          </button>
        </p>
      )}
      <button class="word" onClick={() => (state.stage.value = "new")}>
        {say.keptNew}
      </button>
    </section>
  );
}
