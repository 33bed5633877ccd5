// A new table: one that is laid already, an empty board, or dishes of one's own.

import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { JSX } from "preact";
import { starter } from "#assets";
import * as say from "#words";

import { Panel } from "../parts/controls";
import { Small } from "../parts/small";
import * as session from "../session";
import * as state from "../state";

const STARTERS = ["harbour-supper", "citrus-breakfast", "noodle-night"] as const;

async function open(file: string): Promise<void> {
  try {
    await session.openNew(file);
    state.stage.value = "work";
    state.place.value = "table";
  } catch (error) {
    state.fault.value = say.startersLost({ why: session.message(error) });
  }
}

export function Start(): JSX.Element {
  const files = useSignal<string[]>([]);
  useEffect(() => {
    Promise.all(STARTERS.map(starter))
      .then((all) => (files.value = all))
      .catch((error: unknown) => {
        state.fault.value = say.startersLost({ why: session.message(error) });
      });
  }, []);
  return (
    <section class="say">
      <Panel title={say.keptNew}>
        <ul class="starters" aria-label={say.starters}>
          {files.value.map((file) => (
            <li key={file}>
              <button onClick={() => void open(file)}>
                <Small of={file} shape="table" draw={(core, svg, of) => core.draw_file(svg, of, true)} />
                <span>{(JSON.parse(file) as { title: string }).title}</span>
              </button>
            </li>
          ))}
        </ul>
        <button class="word" onClick={() => (state.stage.value = "empty")}>
          {say.newEmpty}
        </button>
        <button class="word" onClick={() => (state.stage.value = "yours")}>
          {say.newDishes}
        </button>
      </Panel>
      <button class="quiet" onClick={() => (state.stage.value = "work")}>
        {say.backToTable}
      </button>
    </section>
  );
}
