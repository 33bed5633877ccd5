// A table of one's own: board, frame, people, three dishes or more, laid in one go.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import * as say from "#words";

import { freshId } from "../fresh";
import { Arranged, arrangedBy } from "../parts/arranged";
import { Choice, Panel, Stepper } from "../parts/controls";
import { Surfaces } from "../parts/surfaces";
import * as session from "../session";
import * as state from "../state";
import * as units from "../units";

interface Dish {
  dish: string;
  name: string;
}

const FRAMES = [
  ["3:2", "3:2"],
  ["2:3", "2:3"],
  ["4:5", "4:5"],
  ["1:1", say.frameSquare],
  ["16:9", "16:9"],
] as const;

/** Dishes offered at first; the rest when asked for. */
const FIRST = 12;

/** The form; for an `empty` board it asks for no people and no dishes. */
export function Yours({ empty }: { empty: boolean }): JSX.Element {
  const shape = useSignal<"rect" | "round">("rect");
  const width = useSignal(1600);
  const depth = useSignal(950);
  const frame = useSignal<string>("3:2");
  const people = useSignal(4);
  const board = useSignal("charcoal-planks");
  const picked = useSignal<string[]>([]);
  const all = useSignal(false);
  const id = useSignal(freshId());
  const core = session.core();
  const dishes = core.dishes() as Dish[];
  const toggle = (dish: string): void => {
    picked.value = picked.value.includes(dish)
      ? picked.value.filter((each) => each !== dish)
      : [...picked.value, dish];
  };
  const left = empty ? 0 : 3 - picked.value.length;
  const wish = (): unknown => {
    const [wide, high] = frame.value.split(":").map(Number);
    return {
      id: id.value,
      width: width.value,
      depth: depth.value,
      shape: shape.value,
      ratio: [wide, high],
      people: empty ? 0 : people.value,
      board: board.value,
      dishes: picked.value,
    };
  };
  const arranged = arrangedBy(empty || left > 0 ? undefined : wish());
  const lay = async (): Promise<void> => {
    await session.settled();
    const { file } = arranged.chosen.value ?? {};
    await (file ? session.openFile(file) : session.layTable(wish()));
    state.stage.value = "work";
    state.place.value = "table";
    document.querySelector(".picture")?.scrollIntoView({ block: "start" });
  };
  return (
    <section class="say">
      <Panel title={empty ? say.newEmpty : say.nowYours}>
        <Choice
          name={say.boardShape}
          options={[
            ["rect", say.boardRect],
            ["round", say.boardRound],
          ]}
          value={shape.value}
          choose={(outline) => (shape.value = outline)}
        />
        <Stepper
          name={say.boardAcross}
          value={units.length(width.value)}
          less={say.boardNarrower({ by: units.length(100) })}
          more={say.boardWider({ by: units.length(100) })}
          step={(by) => (width.value = Math.max(400, Math.min(4000, width.value + 100 * by)))}
        />
        {shape.value === "round" ? null : (
          <Stepper
            name={say.boardDown}
            value={units.length(depth.value)}
            less={say.boardShallower({ by: units.length(50) })}
            more={say.boardDeeper({ by: units.length(50) })}
            step={(by) => (depth.value = Math.max(300, Math.min(3000, depth.value + 50 * by)))}
          />
        )}
        <Surfaces value={board.value} choose={(prop) => (board.value = prop)} />
        <Choice
          name={say.frame}
          options={FRAMES}
          value={frame.value as (typeof FRAMES)[number][0]}
          choose={(value) => (frame.value = value)}
        />
        {empty ? null : <Stepper
          name={say.people}
          value={String(people.value)}
          less={say.peopleFewer}
          more={say.peopleMore}
          step={(by) => (people.value = Math.max(0, Math.min(12, people.value + by)))}
        />}
        {empty ? null : <div class="field" role="group" aria-label={say.pickDishesGroup}>
          <span>{say.pickDishes}</span>
          <div class="steps">
            {dishes.slice(0, all.value ? dishes.length : FIRST).map((dish) => (
              <button
                key={dish.dish}
                aria-pressed={picked.value.includes(dish.dish)}
                onClick={() => toggle(dish.dish)}
              >
                {dish.name}
                {picked.value[0] === dish.dish ? <small> {say.heroPicked}</small> : null}
              </button>
            ))}
            {all.value ? null : (
              <button class="word" onClick={() => (all.value = true)}>
                {say.dishesMore({ count: String(dishes.length - FIRST) })}
              </button>
            )}
          </div>
        </div>}
        {empty || left > 0 ? null : <Arranged {...arranged} />}
      </Panel>
      <button class="solid last" disabled={left > 0} onClick={() => void lay()}>
        {left > 0 ? say.dishesMissing({ count: left }) : empty ? say.layBoard : say.layTable}
      </button>
      <button class="quiet" onClick={() => (state.stage.value = "work")}>
        {say.backToTable}
      </button>
    </section>
  );
}
