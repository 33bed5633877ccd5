// A table of one's own: board, frame, people, three dishes or more, laid in one go.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";

import { Choice, Panel, Stepper } from "../parts/controls";
import * as session from "../session";
import * as state from "../state";

interface Dish {
  dish: string;
  name: string;
}

const FRAMES = [
  ["3:2", "3:2"],
  ["2:3", "2:3"],
  ["4:5", "4:5"],
  ["1:1", "square"],
  ["16:9", "16:9"],
] as const;

export function Yours(): JSX.Element {
  const width = useSignal(1600);
  const depth = useSignal(950);
  const frame = useSignal<string>("3:2");
  const people = useSignal(4);
  const board = useSignal("charcoal-planks");
  const picked = useSignal<string[]>([]);
  const core = session.core();
  const dishes = core.dishes() as Dish[];
  const boards = core.surfaces() as { prop: string; name: string }[];
  const toggle = (dish: string): void => {
    picked.value = picked.value.includes(dish)
      ? picked.value.filter((each) => each !== dish)
      : [...picked.value, dish];
  };
  const lay = async (): Promise<void> => {
    const [wide, high] = frame.value.split(":").map(Number);
    await session.settled();
    const wish = {
      id: freshId(),
      width: width.value,
      depth: depth.value,
      ratio: [wide, high],
      people: people.value,
      board: board.value,
      dishes: picked.value,
    };
    await session.layTable(wish);
    state.stage.value = "work";
    state.place.value = "table";
    document.querySelector(".picture")?.scrollIntoView({ block: "start" });
  };
  const left = 3 - picked.value.length;
  return (
    <section class="say">
      <Panel title="Now yours">
        <Stepper
          name="Board, across"
          value={state.length(width.value)}
          less="Board 10 cm narrower"
          more="Board 10 cm wider"
          step={(by) => (width.value = Math.max(400, Math.min(4000, width.value + 100 * by)))}
        />
        <Stepper
          name="Board, down"
          value={state.length(depth.value)}
          less="Board 5 cm shallower"
          more="Board 5 cm deeper"
          step={(by) => (depth.value = Math.max(300, Math.min(3000, depth.value + 50 * by)))}
        />
        <label class="field">
          <span>Board of</span>
          <select value={board.value} onChange={(event) => (board.value = event.currentTarget.value)}>
            {boards.map((each) => (
              <option key={each.prop} value={each.prop}>
                {each.name}
              </option>
            ))}
          </select>
        </label>
        <Choice
          name="Frame"
          options={FRAMES}
          value={frame.value as (typeof FRAMES)[number][0]}
          choose={(value) => (frame.value = value)}
        />
        <Stepper
          name="People at the table"
          value={String(people.value)}
          less="One fewer"
          more="One more"
          step={(by) => (people.value = Math.max(0, Math.min(12, people.value + by)))}
        />
        <div class="field" role="group" aria-label="Dishes, the first is the hero">
          <span>Pick three dishes or more; the first is the hero</span>
          <div class="steps">
            {dishes.map((dish) => (
              <button
                key={dish.dish}
                aria-pressed={picked.value.includes(dish.dish)}
                onClick={() => toggle(dish.dish)}
              >
                {dish.name}
              </button>
            ))}
          </div>
        </div>
      </Panel>
      <button class="solid last" disabled={left > 0} onClick={() => void lay()}>
        {left > 0 ? `${left} more ${left === 1 ? "dish" : "dishes"}` : "Lay the table"}
      </button>
      <button class="quiet" onClick={() => (state.stage.value = "work")}>
        Back to the open table
      </button>
    </section>
  );
}

/** A new identity for a layout: 64 random bits as 16 hex digits. */
export function freshId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(8));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
