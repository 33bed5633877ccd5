// The size of a thing from a photo with something of known size beside it: four
// taps on that, then the ends of width and depth. The photo stays in this page.

import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { JSX } from "preact";
import * as say from "#words";

import { enlarge, within } from "../crosshair";
import type { Spot } from "../crosshair";
import * as mine from "../mine";
import { Choice, Field } from "../parts/controls";
import { Known } from "../parts/known";
import { Shot } from "../parts/shot";
import { drawPhoto } from "../photo";
import * as session from "../session";
import * as state from "../state";
import * as units from "../units";

type Gauge = "card" | "a4" | "letter" | "coin";
interface Sized {
  sides: { mm: number; off: number }[];
  told: string;
  cautions: string[];
}

const GAUGES: readonly (readonly [Gauge, string])[] = [
  ["card", say.sizeCard],
  ["a4", say.paperA4],
  ["letter", say.paperLetter],
  ["coin", say.sizeCoin],
];
/** Taps on what lies beside it, and with those on the thing. */
const MARKS = 4;
const ALL = 8;

const figure = (text: string): number => Number(text.replace(",", ".")) || 0;

export function SizePhoto(): JSX.Element {
  const [photo, lens] = [useRef<HTMLCanvasElement>(null), useRef<HTMLCanvasElement>(null)];
  const there = useSignal(false);
  const fault = useSignal("");
  const at = useSignal<Spot>([0, 0]);
  const taps = useSignal<readonly Spot[]>([]);
  const gauge = useSignal<Gauge>("card");
  const straight = useSignal(false);
  const [coin, rim, far] = [useSignal(""), useSignal(""), useSignal("")];

  const away = (): void => {
    // Some browsers hold a canvas's pixels long after the page has let it go.
    if (photo.current !== null) [photo.current.width, photo.current.height] = [0, 0];
    [there.value, taps.value, fault.value] = [false, [], ""];
  };
  useEffect(() => away, []);

  const open = async (input: HTMLInputElement): Promise<void> => {
    const [[file], canvas] = [input.files ?? [], photo.current];
    if (file === undefined || canvas === null) return;
    away();
    try {
      await drawPhoto(file, canvas);
      there.value = true;
      look([canvas.width / 2, canvas.height / 2]);
    } catch (error) {
      away();
      fault.value = session.message(error);
    }
    input.value = "";
  };
  const look = (spot: Spot): void => {
    if (photo.current === null) return;
    at.value = within(photo.current, spot);
    enlarge(photo.current, at.value, lens.current);
  };
  const tap = (): void => {
    // Past the last one the thing is tapped anew.
    const kept = taps.value.length === ALL ? taps.value.slice(0, MARKS) : taps.value;
    taps.value = [...kept, at.value];
  };

  const count = taps.value.length;
  const unit = state.layout.value?.units === "in" ? 25.4 : 10;
  const found = ((): Sized | string | undefined => {
    if (count < MARKS) return undefined;
    try {
      return session.core().measured(
        gauge.value,
        figure(coin.value),
        straight.value,
        Float64Array.from(taps.value.slice(0, MARKS).flat()),
        Float64Array.from(taps.value.slice(MARKS).flat()),
        figure(rim.value) * unit,
        figure(far.value) * unit,
      ) as Sized;
    } catch (error) {
      return session.message(error);
    }
  })();
  const sized = typeof found === "object" ? found : undefined;
  const [width, depth] = sized?.sides.map(({ mm }) => Math.round(mm)) ?? [];
  const hint = count < MARKS ? say.sizeTapBeside : count < MARKS + 2 ? say.sizeTapWidth : say.sizeTapDepth;
  const inUnit = state.layout.value?.units === "in" ? say.unitsIn : say.unitsCm;
  const around = taps.value.slice(0, MARKS).map((spot) => spot.join(" ")).join("L");
  return (
    <details>
      <summary>{say.size}</summary>
      <div class="panel">
        <p class="quiet">{say.sizeWhat}</p>
        <Choice
          name={say.sizeBeside}
          options={GAUGES}
          value={gauge.value}
          choose={(to) => (gauge.value = to)}
        />
        {gauge.value === "coin" ? (
          <Field name={say.sizeDiameter} value={coin.value} mode="decimal" take={(to) => (coin.value = to)} />
        ) : (
          <label class="check">
            <input
              type="checkbox"
              checked={straight.value}
              onChange={(event) => (straight.value = event.currentTarget.checked)}
            />
            <span>{say.sizeStraight}</span>
          </label>
        )}
        <label class="field">
          <span>{say.sizeChoose}</span>
          <input type="file" accept="image/*" onChange={(event) => void open(event.currentTarget)} />
        </label>
        {fault.value === "" ? null : <p role="alert">{fault.value}</p>}
        <Shot
          name={say.sizeKeys}
          hidden={!there.value}
          shown={photo}
          lens={lens}
          size={[photo.current?.width || 1, photo.current?.height || 1]}
          at={at.value}
          marks={taps.value}
          look={look}
          tap={tap}
        >
          {count < 2 ? null : <path class="paper" d={`M${around}${count < MARKS ? "" : "z"}`} />}
        </Shot>
        {there.value ? (
          <>
            <p role="status">{hint({ number: String(count < MARKS ? count + 1 : (count - MARKS) % 2 + 1) })}</p>
            {typeof found === "string" ? <p role="alert">{found}</p> : null}
            {sized === undefined ? null : (
              <>
                <p>
                  <b>{sized.told}</b>
                </p>
                {sized.cautions.map((line) => (
                  <p key={line} class="quiet">
                    {line}
                  </p>
                ))}
                <Field name={say.sizeRim({ unit: inUnit })} value={rim.value} mode="decimal" take={(to) => (rim.value = to)} />
                <Field name={say.sizeLens({ unit: inUnit })} value={far.value} mode="decimal" take={(to) => (far.value = to)} />
              </>
            )}
            <div class="steps">
              {count === 0 ? null : (
                <button class="word" onClick={() => (taps.value = taps.value.slice(0, -1))}>
                  {say.sizeBack}
                </button>
              )}
              <button class="word" onClick={away}>
                {say.testAway}
              </button>
            </div>
            {width === undefined ? null : (
              <>
                <p>{say.sizeTake}</p>
                <Known
                  name={say.sizeTake}
                  words={units.length(width)}
                  take={(prop) => void mine.keepKnown(prop, width, depth ?? 0)}
                />
              </>
            )}
          </>
        ) : null}
      </div>
    </details>
  );
}
