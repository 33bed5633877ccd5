// The camera above the table, the room it stands in, and the one light.

import type { JSX } from "preact";

import { act } from "../acts";
import type { Layout } from "../core";
import { Choice, Panel, Stepper } from "../parts/controls";
import * as session from "../session";
import { length } from "../state";

const FORMATS = [
  ["full-frame", "36 × 24 mm"],
  ["aps-c", "23.5 × 15.6"],
  ["aps-c-small", "22.3 × 14.9"],
  ["four-thirds", "17.3 × 13"],
  ["medium", "43.8 × 32.9"],
] as const;
const FOCALS = [24, 28, 35, 40, 50, 60, 70, 85, 90, 100, 105, 120];

function hour(clock: number): string {
  const minutes = Math.round((clock % 360) * 2);
  const [whole, rest] = [Math.floor(minutes / 60) || 12, minutes % 60];
  return rest === 0 ? `${whole} o’clock` : `${whole}:${String(rest).padStart(2, "0")}`;
}

export function CameraPanel({ layout }: { layout: Layout }): JSX.Element {
  const { camera, light, rig } = layout;
  const focal = (by: -1 | 1): void => {
    const next =
      by > 0
        ? FOCALS.find((each) => each > camera.focal)
        : [...FOCALS].reverse().find((each) => each < camera.focal);
    if (next !== undefined) act.camera({ ...camera, focal: next });
  };
  return (
    <Panel title="Camera & light">
      <Choice
        name="Sensor"
        options={FORMATS}
        value={camera.format as (typeof FORMATS)[number][0]}
        choose={(format) => act.camera({ ...camera, format })}
      />
      <Stepper
        name="Focal length"
        value={`${camera.focal} mm`}
        less="Shorter focal length"
        more="Longer focal length"
        step={focal}
      />
      <Stepper
        name="Ceiling above the floor"
        value={length(rig.ceiling)}
        less="Ceiling 10 cm lower"
        more="Ceiling 10 cm higher"
        step={(by) => act.rig({ ...rig, ceiling: Math.max(1000, rig.ceiling + 100 * by) })}
      />
      <p>{session.core().lens_words()}</p>
      <p class="caution">
        A camera over people and food falls hard: rate every part of the rig, bag it, tether it, and
        follow local rules and a qualified person.
      </p>
      <h3>Light</h3>
      <Stepper
        name="It stands at"
        value={hour(light.clock)}
        less="Half an hour back round the clock"
        more="Half an hour on round the clock"
        step={(by) => act.light({ ...light, clock: (light.clock + 15 * by + 360) % 360 })}
      />
      <Stepper
        name="Away from the middle"
        value={length(light.distance)}
        less="Light 10 cm nearer"
        more="Light 10 cm farther"
        step={(by) => act.light({ ...light, distance: Math.max(0, light.distance + 100 * by) })}
      />
      <Stepper
        name="Above the table"
        value={length(light.height_above_table)}
        less="Light 10 cm lower"
        more="Light 10 cm higher"
        step={(by) =>
          act.light({
            ...light,
            height_above_table: Math.max(50, light.height_above_table + 100 * by),
          })
        }
      />
      <Choice
        name="Outline"
        options={[
          ["window", "window"],
          ["disc", "disc"],
        ]}
        value={light.shape}
        choose={(shape) => act.light({ ...light, shape })}
      />
      <Stepper
        name="Width"
        value={length(light.width)}
        less="Light 10 cm narrower"
        more="Light 10 cm wider"
        step={(by) => act.light({ ...light, width: Math.max(10, light.width + 100 * by) })}
      />
    </Panel>
  );
}
