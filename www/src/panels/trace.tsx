// The outline of a prop traced over a photo of it: taps or a stroke round its
// edge, and two taps on a known length.

import { useComputed } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { JSX } from "preact";
import * as say from "#words";

import type { Spot } from "../crosshair";
import { Choice, Stepper } from "../parts/controls";
import * as state from "../state";
import * as units from "../units";
import type { Outline } from "../trace";
import { Tracing } from "../tracing";

/** How wide the photo is taken to be shown where marks are sized, px of the screen. */
const USUAL = 350;

const path = (spots: readonly Spot[], closed: boolean): string =>
  spots.length < 2 ? "" : `M${spots.join("L")}${closed ? "z" : ""}`;

/** What lies over the part of the photo that is seen. */
function Over({ tracing }: { tracing: Tracing }): JSX.Element {
  const { points, marks } = tracing.now.value;
  const { x, y, wide } = tracing.view.value;
  const [width, height] = tracing.whole;
  const high = (wide / width) * height;
  const [px, py] = tracing.at.value;
  const sized = (px: number): number => (wide / USUAL) * px;
  const cross = ([cx, cy]: Spot): string => {
    const arm = sized(8);
    return `M${cx - arm} ${cy}h${2 * arm}M${cx} ${cy - arm}v${2 * arm}`;
  };
  const picked = tracing.picked.value;
  return (
    <svg viewBox={`${x} ${y} ${wide} ${high}`} aria-hidden="true">
      <path class="round" d={path(points, true)} />
      <path d={path(tracing.stroke.value, false)} />
      <path class="paper" d={path(marks, false)} />
      <path d={marks.map(cross).join("")} />
      {points.map(([cx, cy], n) => (
        <circle key={n} class={n === picked ? "picked" : ""} cx={cx} cy={cy} r={sized(n === picked ? 9 : 4)} />
      ))}
      {tracing.aiming.value ? <path d={`M${px} ${y}v${high}M${x} ${py}h${wide}`} /> : null}
    </svg>
  );
}

/** What is to be done next; nothing when all is there. */
function next(tracing: Tracing): string {
  const { points, marks } = tracing.now.value;
  if (points.length < 3) return tracing.aim.value === "draw" ? say.traceDraw : say.traceTap;
  if (marks.length < 2) return tracing.aim.value === "length" ? say.traceEnds : say.traceMarks;
  return tracing.known.value.trim() === "" ? say.traceLength : "";
}

/** Moves or removes the point that is picked. */
function Point({ tracing }: { tracing: Tracing }): JSX.Element {
  const ways: [string, string, number, number][] = [
    ["←", say.stepLeft, -1, 0],
    ["↑", say.stepUp, 0, -1],
    ["↓", say.stepDown, 0, 1],
    ["→", say.stepRight, 1, 0],
  ];
  return (
    <div class="line" role="group" aria-label={say.tracePoint}>
      <button type="button" class="word" onClick={() => tracing.remove()}>
        {say.traceRemove}
      </button>
      <span class="stepper">
        {ways.map(([sign, label, dx, dy]) => (
          <button type="button" key={label} aria-label={label} onClick={() => tracing.shift(dx, dy)}>
            {sign}
          </button>
        ))}
      </span>
    </div>
  );
}

/** Under the photo: enlarging, mending, and the known length. */
function Tools({ tracing }: { tracing: Tracing }): JSX.Element {
  const unit = state.layout.value?.units === "in" ? say.unitsIn : say.unitsCm;
  return (
    <>
      {tracing.picked.value === undefined ? null : <Point tracing={tracing} />}
      <Stepper
        name={say.traceZoom}
        value={say.traceTimes({ times: (tracing.whole[0] / tracing.view.value.wide).toFixed(1) })}
        less={say.traceSmaller}
        more={say.traceLarger}
        step={(by) => tracing.zoom(by)}
      />
      <button type="button" class="word" disabled={tracing.past.value.length === 0} onClick={() => tracing.back()}>
        {say.traceBack}
      </button>
      <label class="field">
        <span>{say.traceTrue({ unit })}</span>
        <input
          inputMode="decimal"
          maxLength={8}
          value={tracing.known.value}
          onInput={(event) => {
            tracing.known.value = event.currentTarget.value;
            tracing.settle();
          }}
        />
      </label>
    </>
  );
}

/** Says what it has found, or that there is nothing yet. */
export function Trace(props: { found: (outline: Outline | undefined) => void }): JSX.Element {
  const tracing = (useRef<Tracing>(undefined).current ??= new Tracing(props.found));
  // Some browsers hold a canvas's pixels long after the page has let it go.
  useEffect(() => () => tracing.away(), []);
  const right = useComputed(() => (tracing.at.value[0] - tracing.view.value.x) * 2 < tracing.view.value.wide);
  const shown = tracing.shown.value;
  const found = tracing.outline.value;
  const todo = shown ? next(tracing) : "";
  return (
    <>
      <p class="quiet">{say.traceAdvice}</p>
      <label class="field">
        <span>{say.tracePhoto}</span>
        <input
          type="file"
          accept="image/*"
          onChange={({ currentTarget: input }) => {
            const [file] = input.files ?? [];
            if (file !== undefined) void tracing.choose(file);
            input.value = "";
          }}
        />
      </label>
      {shown ? (
        <Choice
          name={say.traceAim}
          options={[
            ["edge", say.traceEdge],
            ["draw", say.traceStroke],
            ["length", say.traceKnown],
          ]}
          value={tracing.aim.value}
          choose={(aim) => ([tracing.aim.value, tracing.picked.value] = [aim, undefined])}
        />
      ) : null}
      {todo === "" ? null : <p role="status">{todo}</p>}
      <div
        class="shot trace"
        hidden={!shown}
        tabIndex={0}
        role="application"
        aria-label={say.traceKeys}
        onKeyDown={tracing.key}
        onPointerDown={tracing.down}
        onPointerMove={tracing.move}
        onPointerUp={tracing.up}
        onPointerCancel={tracing.cancel}
        onBlur={() => (tracing.aiming.value = false)}
      >
        <canvas ref={(canvas) => void (tracing.canvas = canvas)} width="0" height="0" />
        <Over tracing={tracing} />
        <div class={`glass${right.value ? " right" : ""}`} hidden={!tracing.aiming.value} aria-hidden="true">
          <canvas ref={(lens) => void (tracing.lens = lens)} width="96" height="96" />
        </div>
      </div>
      {shown ? <Tools tracing={tracing} /> : null}
      {found === undefined ? null : (
        <p role="status">
          {say.traceFound({ width: units.length(found.width), depth: units.length(found.depth) })}
        </p>
      )}
      {tracing.fault.value === "" ? null : <p role="alert">{tracing.fault.value}</p>}
    </>
  );
}
