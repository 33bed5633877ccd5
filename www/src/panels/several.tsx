// What is done to several picked things at once.

import type { JSX } from "preact";
import * as say from "#words";

import * as several from "../several";
import * as state from "../state";
import { Arrange } from "./arrange";
import { Moves } from "./thing";

/** Whether several things are picked, or being picked. */
export const isOn = (): boolean => state.picking.value || state.picked.value.length > 0;

function Turns(): JSX.Element {
  return (
    <div class="line" role="group" aria-label={say.turnAll}>
      <span class="name">{say.turnAll}</span>
      <span class="stepper">
        <button aria-label={say.turnBack} onClick={() => several.turnBy(-5)}>
          ↺
        </button>
        <button aria-label={say.turnOn} onClick={() => several.turnBy(5)}>
          ↻
        </button>
      </span>
    </div>
  );
}

function Deeds(): JSX.Element {
  const picked = state.picked.value;
  const { items = [], linens = [] } = state.layout.value ?? {};
  const things = items.filter(({ id }) => picked.includes(id));
  const all = [...things, ...linens.filter(({ id }) => picked.includes(id))];
  const locked = all.every((thing) => thing.locked);
  const grouped = things.filter(({ group }) => group !== undefined);
  const one = grouped.length === things.length && things.every(({ group }) => group === things[0]?.group);
  return (
    <div class="steps">
      <button class="word" onClick={() => several.deed("repeat")}>
        {say.severalRepeat}
      </button>
      <button class="word" aria-pressed={locked} onClick={() => several.deed(locked ? "unlock" : "lock")}>
        {locked ? say.severalUnlock : say.severalLock}
      </button>
      {several.staying.value > 0 && !locked ? (
        <button class="word" onClick={() => several.deed("unlock")}>
          {say.severalUnlock}
        </button>
      ) : null}
      {things.length < 2 || one ? null : (
        <button class="word" onClick={() => several.deed("group")}>
          {say.severalGroup}
        </button>
      )}
      {grouped.length === 0 ? null : (
        <button class="word" onClick={() => several.deed("apart")}>
          {say.severalApart}
        </button>
      )}
      <button class="word" onClick={() => several.deed("remove")}>
        {say.severalRemove}
      </button>
    </div>
  );
}

export function Several(): JSX.Element {
  const picked = state.picked.value;
  const staying = several.staying.value;
  const count = picked.length;
  return (
    <>
      <section class="chosen-strip" aria-label={say.several}>
        <div class="line">
          <h2>{several.words()}</h2>
          <button class="word" onClick={several.leave}>
            {say.done}
          </button>
        </div>
        {staying === 0 ? null : <p class="quiet">{say.pickedLocked({ count: staying })}</p>}
        {state.picking.value ? <p class="quiet">{say.pickedHow}</p> : null}
        <div class="steps">
          <button class="word" onClick={several.all}>
            {say.pickAll}
          </button>
          {count === 0 ? null : (
            <button class="word" onClick={several.none}>
              {say.pickNone}
            </button>
          )}
        </div>
        {count === 0 ? null : (
          <>
            <Deeds />
            <Moves />
            <Turns />
          </>
        )}
      </section>
      {count === 0 ? null : <Arrange ids={picked} title={say.arrangeSeveral} />}
    </>
  );
}
