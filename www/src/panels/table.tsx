// The table itself: board, floor and the frame on it.

import type { JSX } from "preact";

import { act } from "../acts";
import type { Layout, Pair } from "../core";
import { Choice, Colour, Field, Stepper } from "../parts/controls";
import * as state from "../state";

const RATIOS: Record<string, Pair> = {
  "3:2": [3, 2],
  "2:3": [2, 3],
  "4:3": [4, 3],
  "4:5": [4, 5],
  "1:1": [1, 1],
  "16:9": [16, 9],
};

export function TablePanel({ layout }: { layout: Layout }): JSX.Element {
  const { table, frame, floor } = layout;
  const ratio = Object.keys(RATIOS).find((key) => {
    const [w, h] = RATIOS[key] ?? [0, 1];
    return w * frame.ratio[1] === h * frame.ratio[0];
  });
  const { length } = state;
  return (
    <details>
      <summary>Board, floor and frame</summary>
      <section class="panel" aria-label="Board, floor and frame">
        <Choice
          name="Shape of the board"
          options={[
            ["rect", "four corners"],
            ["round", "round"],
          ]}
          value={table.shape}
          choose={(shape) => act.table(table, { shape })}
        />
        <Stepper
          name="Board, across"
          value={length(table.width)}
          less="Board 5 cm narrower"
          more="Board 5 cm wider"
          step={(by) => act.table(table, { width: Math.max(100, table.width + 50 * by) })}
        />
        {table.shape === "round" ? null : (
          <Stepper
            name="Board, down"
            value={length(table.depth)}
            less="Board 5 cm shallower"
            more="Board 5 cm deeper"
            step={(by) => act.table(table, { depth: Math.max(100, table.depth + 50 * by) })}
          />
        )}
        <Field
          name="What the board is called"
          value={table.surface.name}
          take={(name) => act.table(table, { surface: { ...table.surface, name } })}
        />
        <Colour
          name="Colour of the board"
          value={table.surface.colour}
          take={(colour) => act.table(table, { surface: { ...table.surface, colour } })}
        />
        <Colour name="Colour of the floor" value={floor.colour} take={(colour) => act.floor(colour)} />
        <Choice
          name="Frame"
          options={Object.keys(RATIOS).map((key) => [key, key] as const)}
          value={ratio}
          choose={(key) => act.frame(frame, { ratio: RATIOS[key] ?? frame.ratio })}
        />
        <Stepper
          name="Frame, across"
          value={length(frame.width)}
          less="Frame 5 cm narrower"
          more="Frame 5 cm wider"
          step={(by) => act.frame(frame, { width: Math.max(50, frame.width + 50 * by) })}
        />
        <Stepper
          name="Turn of the camera"
          value={`${frame.turn}°`}
          less="Camera a quarter turn back"
          more="Camera a quarter turn on"
          step={(by) => act.frame(frame, { turn: (frame.turn + 90 * by + 360) % 360 })}
        />
        <Choice
          name="Tone meant"
          options={[
            ["low-key", "dark"],
            ["normal", "neither"],
            ["high-key", "pale"],
          ]}
          value={layout.look}
          choose={(look) => act.head({ look })}
        />
        <Choice
          name="Lengths in"
          options={[
            ["cm", "cm"],
            ["in", "inches"],
          ]}
          value={layout.units}
          choose={(units) => act.head({ units })}
        />
      </section>
    </details>
  );
}
