// The camera above the table and the room it stands in.

import type { JSX } from "preact";
import * as say from "#words";

import { act } from "../acts";
import type { Camera, Layout, Pair } from "../core";
import { Cautions } from "../parts/cautions";
import { Choice, Panel, Stepper } from "../parts/controls";
import { TwoNumbers } from "../parts/two";
import * as session from "../session";
import { fault, part, putting, report, type Part } from "../state";
import { length } from "../units";
import { LightControls } from "./light";
import { RigPanel } from "./rig";
import { Show } from "./show";
import { Through } from "./sight";

const FORMATS = [
  ["full-frame", "36 × 24 mm"],
  ["aps-c", "23.5 × 15.6"],
  ["aps-c-small", "22.3 × 14.9"],
  ["four-thirds", "17.3 × 13"],
  ["medium", "43.8 × 32.9"],
  ["phone", say.phone],
] as const;
/** What the readings say of the camera, where they say it. */
function Said(): JSX.Element {
  const keys = ["fit:ceiling", "fit:lenses", "fit:lens", "lean:focus", "lean:diffraction"];
  const said = report.value?.findings.filter(({ key }) => keys.includes(key)) ?? [];
  return (
    <>
      {said.map(({ key, sentence, state, remedy }) => (
        <p key={key} class={state === "holds" ? "quiet" : undefined}>
          {sentence}
          {remedy ? (
            <button class="word" onClick={() => session.remedy(key)}>
              {remedy.act}
            </button>
          ) : null}
        </p>
      ))}
    </>
  );
}

/** Pixels of the picture: of the usual model, or told. */
function Pixels({ own, pixels }: { own: boolean; pixels: Pair }): JSX.Element {
  const set = (typed: Pair): void => {
    if (typed.every((side) => Number.isInteger(side) && side > 0)) act.pixels(typed);
    else fault.value = say.pixelsRange;
  };
  return (
    <details>
      <summary>{say.pixelsAre({ across: String(pixels[0]), down: String(pixels[1]) })}</summary>
      <TwoNumbers
        name={say.pixels}
        sides={[say.pixelsLong, say.pixelsShort]}
        done={say.pixelsSet}
        take={set}
      />
      {own ? (
        <button class="word" onClick={() => act.pixels([0, 0])}>
          {say.pixelsUsual}
        </button>
      ) : null}
    </details>
  );
}

const PARTS: readonly (readonly [Part, string])[] = [
  ["camera", say.partCamera],
  ["rig", say.rig],
  ["light", say.light],
];

export function CameraPanel({ layout }: { layout: Layout }): JSX.Element {
  return (
    <Panel title={say.placeCamera}>
      <Through />
      <Choice name={say.part} options={PARTS} value={part.value} choose={open} />
      {part.value === "camera" ? <CameraControls layout={layout} /> : null}
      {part.value === "rig" ? <RigPanel layout={layout} /> : null}
      {part.value === "light" ? <LightControls layout={layout} /> : null}
      <Cautions of={["camera"]} />
    </Panel>
  );
}

function open(which: Part): void {
  part.value = which;
  putting.value = undefined;
}

function CameraControls({ layout }: { layout: Layout }): JSX.Element {
  const { camera, rig } = layout;
  const by = length(100);
  const told = session.core().camera() as Camera;
  return (
    <>
      <Choice
        name={say.sensor}
        options={FORMATS}
        value={camera.format as (typeof FORMATS)[number][0]}
        choose={act.format}
      />
      <Stepper
        name={say.focal}
        value={say.millimetres({ length: String(camera.focal) })}
        less={say.focalShorter}
        more={say.focalLonger}
        step={(way) => act.dial("focal", way > 0)}
      />
      <Stepper
        name={say.cameraHeight}
        value={told.height}
        less={say.cameraLower}
        more={say.cameraHigher}
        step={(way) => act.dial("height", way > 0)}
      />
      <Stepper
        name={say.frameAcross}
        value={length(layout.frame.width)}
        less={say.frameNarrower({ by: length(50) })}
        more={say.frameWider({ by: length(50) })}
        step={(way) => act.frame(layout.frame, { width: Math.max(50, layout.frame.width + 50 * way) })}
      />
      <Stepper
        name={say.ceiling}
        value={length(rig.ceiling)}
        less={say.ceilingLower({ by })}
        more={say.ceilingHigher({ by })}
        step={(way) => act.ceiling(Math.max(1000, rig.ceiling + 100 * way))}
      />
      <Stepper
        name={say.aperture}
        value={say.apertureIs({ stop: told.stop })}
        less={say.apertureWider}
        more={say.apertureSmaller}
        step={(way) => act.dial("aperture", way > 0)}
      />
      <Stepper
        name={say.focus}
        value={told.focus}
        less={say.focusLower}
        more={say.focusHigher}
        step={(way) => act.dial("focus", way > 0)}
      />
      {camera.focus_height === undefined ? (
        <p class="quiet">{say.focusIsEven}</p>
      ) : (
        <button class="word" onClick={act.focusEvenly}>
          {say.focusEvenly}
        </button>
      )}
      <details>
        <summary>{say.lensesAtHand}</summary>
        <div class="steps" role="group" aria-label={say.lensesAtHand}>
          {told.lenses.map(({ focal, own }) => (
            <button key={focal} type="button" aria-pressed={own} onClick={() => act.keepLens(focal)}>
              {say.millimetres({ length: String(focal) })}
            </button>
          ))}
        </div>
      </details>
      <Pixels own={camera.pixels !== undefined} pixels={told.pixels} />
      <Said />
      <Show />
    </>
  );
}
