// The camera above the table, the room it stands in, and the one light.

import type { JSX } from "preact";
import * as say from "#words";

import { act } from "../acts";
import type { Layout } from "../core";
import { Cautions } from "../parts/cautions";
import { Choice, Panel, Stepper } from "../parts/controls";
import { length, report } from "../state";
import { RigPanel } from "./rig";
import { Show } from "./show";
import { Through } from "./sight";


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
  return rest === 0
    ? say.lightHour({ hour: String(whole) })
    : `${whole}:${String(rest).padStart(2, "0")}`;
}

/** Where the lens stands, as the Fit reading says it. */
const lens = (): string =>
  report.value?.findings.find((finding) => finding.key === "fit:ceiling")?.sentence ?? "";

export function CameraPanel({ layout }: { layout: Layout }): JSX.Element {
  const { camera, light, rig } = layout;
  const by = length(100);
  const focal = (by: -1 | 1): void => {
    const next =
      by > 0
        ? FOCALS.find((each) => each > camera.focal)
        : [...FOCALS].reverse().find((each) => each < camera.focal);
    if (next !== undefined) act.camera({ ...camera, focal: next });
  };
  return (
    <Panel title={say.placeCamera}>
      <Through />
      <Choice
        name={say.sensor}
        options={FORMATS}
        value={camera.format as (typeof FORMATS)[number][0]}
        choose={(format) => act.camera({ ...camera, format })}
      />
      <Stepper
        name={say.focal}
        value={say.millimetres({ length: String(camera.focal) })}
        less={say.focalShorter}
        more={say.focalLonger}
        step={focal}
      />
      <Stepper
        name={say.ceiling}
        value={length(rig.ceiling)}
        less={say.ceilingLower({ by })}
        more={say.ceilingHigher({ by })}
        step={(way) => act.ceiling(Math.max(1000, rig.ceiling + 100 * way))}
      />
      <p>{lens()}</p>
      <Show />
      <RigPanel layout={layout} />
      <Cautions of={["camera"]} />
      <h3>{say.light}</h3>
      <Stepper
        name={say.lightAt}
        value={hour(light.clock)}
        less={say.lightBack}
        more={say.lightOn}
        step={(way) => act.light({ ...light, clock: (light.clock + 15 * way + 360) % 360 })}
      />
      <Stepper
        name={say.lightAway}
        value={length(light.distance)}
        less={say.lightNearer({ by })}
        more={say.lightFarther({ by })}
        step={(way) => act.light({ ...light, distance: Math.max(0, light.distance + 100 * way) })}
      />
      <Stepper
        name={say.lightAbove}
        value={length(light.height_above_table)}
        less={say.lightLower({ by })}
        more={say.lightHigher({ by })}
        step={(way) =>
          act.light({
            ...light,
            height_above_table: Math.max(50, light.height_above_table + 100 * way),
          })
        }
      />
      <Choice
        name={say.lightShape}
        options={[
          ["window", say.lightWindow],
          ["disc", say.lightDisc],
        ]}
        value={light.shape}
        choose={(shape) => act.light({ ...light, shape })}
      />
      <Stepper
        name={say.width}
        value={length(light.width)}
        less={say.lightNarrower({ by })}
        more={say.lightWider({ by })}
        step={(way) => act.light({ ...light, width: Math.max(10, light.width + 100 * way) })}
      />
    </Panel>
  );
}
