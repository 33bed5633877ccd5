// The table itself: board, floor and the frame on it.

import type { JSX } from "preact";
import * as say from "#words";

import { act } from "../acts";
import type { Layout, Pair } from "../core";
import { Cautions } from "../parts/cautions";
import { Choice, Colour, Field, Stepper } from "../parts/controls";
import { Surfaces } from "../parts/surfaces";
import * as session from "../session";
import { length } from "../units";
import { PlainColour } from "./thing";

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
  const by = length(50);
  return (
    <details>
      <summary>{say.boardPanel}</summary>
      <section class="panel" aria-label={say.boardPanel}>
        <Choice
          name={say.boardShape}
          options={[
            ["rect", say.boardRect],
            ["round", say.boardRound],
          ]}
          value={table.shape}
          choose={(shape) => act.table(table, { shape })}
        />
        <Stepper
          name={say.boardAcross}
          value={length(table.width)}
          less={say.boardNarrower({ by })}
          more={say.boardWider({ by })}
          step={(way) => act.table(table, { width: Math.max(100, table.width + 50 * way) })}
        />
        {table.shape === "round" ? null : (
          <Stepper
            name={say.boardDown}
            value={length(table.depth)}
            less={say.boardShallower({ by })}
            more={say.boardDeeper({ by })}
            step={(way) => act.table(table, { depth: Math.max(100, table.depth + 50 * way) })}
          />
        )}
        <Surfaces
          value={table.surface.prop}
          choose={(prop) => session.act(() => session.core().set_surface(prop))}
        />
        <Field
          name={say.boardName}
          value={table.surface.name}
          take={(name) => act.table(table, { surface: { ...table.surface, name } })}
        />
        <PlainColour
          thing={table.surface.name}
          name={say.boardColour}
          colour={table.surface.colour}
          origin={table.surface.origin}
          take={(colour, origin) =>
            act.table(table, { surface: { ...table.surface, colour, origin } })
          }
        />
        <Colour name={say.floorColour} value={floor.colour} take={(colour) => act.floor(colour)} />
        <Choice
          name={say.frame}
          options={Object.keys(RATIOS).map((key) => [key, key] as const)}
          value={ratio}
          choose={(key) => act.frame(frame, { ratio: RATIOS[key] ?? frame.ratio })}
        />
        <Stepper
          name={say.frameAcross}
          value={length(frame.width)}
          less={say.frameNarrower({ by })}
          more={say.frameWider({ by })}
          step={(way) => act.frame(frame, { width: Math.max(50, frame.width + 50 * way) })}
        />
        <Stepper
          name={say.cameraTurn}
          value={say.degrees({ turn: String(frame.turn) })}
          less={say.cameraBack}
          more={say.cameraOn}
          step={(way) => act.frame(frame, { turn: (frame.turn + 90 * way + 360) % 360 })}
        />
        <Choice
          name={say.look}
          options={[
            ["low-key", say.lookLow],
            ["normal", say.lookNormal],
            ["high-key", say.lookHigh],
          ]}
          value={layout.look}
          choose={(look) => act.head({ look })}
        />
        <Choice
          name={say.units}
          options={[
            ["cm", say.unitsCm],
            ["in", say.unitsIn],
          ]}
          value={layout.units}
          choose={(units) => act.head({ units })}
        />
        <Cautions of={["table"]} />
      </section>
    </details>
  );
}
