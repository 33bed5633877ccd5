// Colour from a photo: choose it, tap the thing, tap paper in the same light.

import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { JSX } from "preact";
import { Planner } from "#core";
import * as say from "#words";

import type { Tone } from "../core";
import { enlarge, within } from "../crosshair";
import type { Spot } from "../crosshair";
import { Choice, Tape } from "../parts/controls";
import { Shot } from "../parts/shot";
import { drawPhoto, square } from "../photo";
import { message } from "../session";

type Aim = "thing" | "paper";
/** Which paper lies there. */
type Card = "white" | "grey";

/** Side of the square read about a tap, over the photo's shorter side. */
const SPOTS = { small: 1 / 48, middle: 1 / 16, large: 1 / 6 };
type Wide = keyof typeof SPOTS;
const WIDE: readonly (readonly [Wide, string])[] = [
  ["small", say.photoSmall],
  ["middle", say.photoMiddle],
  ["large", say.photoLarge],
];
/** Least side of it, px. */
const LEAST = 12;
/** The tones of a part, each as a patch, and where they come from. */
export function Tones({ tones }: { tones: readonly Tone[] }): JSX.Element {
  const origins = { guess: say.originGuess, photo: say.originPhoto, measured: say.originMeasured };
  return (
    <ul class="swatches">
      {tones.map(({ srgb, share, origin }, place) => (
        <li key={place}>
          <svg viewBox="0 0 36 36" aria-hidden="true">
            <path d="M2 4L33 2 35 33 3 35z" fill={srgb} />
          </svg>
          {share === 100 ? null : <span>{say.photoShare({ share: String(share) })}</span>}
          <small>{origins[origin]}</small>
        </li>
      ))}
    </ul>
  );
}

/** Photo, taps and what they give, for one thing. */
export function Photo<Part extends string>(props: {
  thing: string;
  parts: readonly (readonly [Part, string])[];
  /** Whether it takes a single tone. */
  plain?: boolean;
  /** Says whether they were taken; if not, the photo stays. */
  take: (part: Part, tones: Tone[]) => boolean;
}): JSX.Element {
  const canvas = useRef<HTMLCanvasElement>(null);
  const lens = useRef<HTMLCanvasElement>(null);
  const shown = useSignal(false);
  const fault = useSignal("");
  const aim = useSignal<Aim>("thing");
  const at = useSignal<Spot>([0, 0]);
  const picked = useSignal<Partial<Record<Aim, Spot>>>({});
  const wide = useSignal<Wide>("middle");
  const card = useSignal<Card>("white");
  const part = useSignal(props.parts[0]?.[0]);
  const tones = useSignal<Tone[]>([]);

  const away = (): void => {
    const photo = canvas.current;
    if (photo !== null) [photo.width, photo.height] = [0, 0];
    [shown.value, picked.value, tones.value, aim.value] = [false, {}, [], "thing"];
  };
  // Some browsers hold a canvas's pixels long after the page has let it go.
  useEffect(() => away, []);

  const choose = async (input: HTMLInputElement): Promise<void> => {
    const [file] = input.files ?? [];
    const photo = canvas.current;
    if (file === undefined || photo === null) return;
    input.value = "";
    away();
    fault.value = "";
    try {
      await drawPhoto(file, photo);
      shown.value = true;
      look([photo.width / 2, photo.height / 2]);
    } catch (error) {
      away();
      fault.value = message(error);
    }
  };

  const side = (photo: HTMLCanvasElement, share: number): number =>
    Math.max(LEAST, Math.round(Math.min(photo.width, photo.height) * share));

  /** Puts the cross-hair somewhere and shows what lies there. */
  const look = (spot: Spot): void => {
    const photo = canvas.current;
    if (photo === null) return;
    at.value = within(photo, spot);
    enlarge(photo, at.value, lens.current);
  };

  /** Reads what can be read of the places tapped. */
  const read = (): void => {
    const photo = canvas.current;
    const { thing, paper } = picked.value;
    if (photo === null || thing === undefined || paper === undefined) return;
    [fault.value, tones.value] = ["", []];
    const [a, b] = [
      square(photo, thing, side(photo, SPOTS[wide.value])),
      square(photo, paper, side(photo, SPOTS.small)),
    ];
    const bytes = ({ data }: ImageData): Uint8Array => new Uint8Array(data.buffer);
    try {
      const grey = card.value === "grey";
      tones.value = Planner.photographed(bytes(a), a.width, bytes(b), b.width, grey) as Tone[];
    } catch (error) {
      fault.value = message(error);
    }
  };

  const pick = (): void => {
    picked.value = { ...picked.value, [aim.value]: at.value };
    if (aim.value === "thing") aim.value = "paper";
    read();
  };

  const photo = canvas.current;
  const mark = (spot: Spot, share: number): string => {
    const half = photo === null ? 0 : side(photo, share) / 2;
    return `M${spot[0] - half} ${spot[1] - half}h${2 * half}v${2 * half}h${-2 * half}z`;
  };
  const { thing, paper } = picked.value;
  return (
    <details class="photo">
      <summary>{say.photo}</summary>
      <div class="panel">
        <p class="quiet">{say.photoAdvice}</p>
        <label class="field">
          <span>{say.photoChoose}</span>
          <input type="file" accept="image/*" onChange={(event) => void choose(event.currentTarget)} />
        </label>
        <Shot
          name={say.photoKeys}
          hidden={!shown.value}
          shown={canvas}
          lens={lens}
          size={[photo?.width || 1, photo?.height || 1]}
          at={at.value}
          marks={[]}
          look={look}
          tap={pick}
        >
          {thing === undefined ? null : <path d={mark(thing, SPOTS[wide.value])} />}
          {paper === undefined ? null : <path class="paper" d={mark(paper, SPOTS.small)} />}
        </Shot>
        {shown.value ? (
          <p role="status">
            {aim.value === "thing" ? say.photoTapThing({ thing: props.thing }) : say.photoTapPaper}
          </p>
        ) : null}
        {fault.value === "" ? null : <p role="alert">{fault.value}</p>}
        {tones.value.length === 0 ? null : (
          <>
            {props.parts.length < 2 ? null : (
              <Choice
                name={say.photoPart}
                options={props.parts}
                value={part.value}
                choose={(next) => (part.value = next)}
              />
            )}
            <Tones tones={tones.value} />
            {props.plain ? <p class="quiet">{say.photoPlain}</p> : null}
            <Tape
              act={say.photoTake({ count: props.plain ? 1 : tones.value.length })}
              onClick={() => {
                if (part.value !== undefined && props.take(part.value, tones.value)) away();
              }}
            />
          </>
        )}
        {shown.value ? (
          <>
            <Choice
              name={say.photoNext}
              options={[
                ["thing", say.photoThing],
                ["paper", say.photoPaper],
              ]}
              value={aim.value}
              choose={(next) => (aim.value = next)}
            />
            <Choice
              name={say.photoCard}
              options={[
                ["white", say.photoWhite],
                ["grey", say.photoGrey],
              ]}
              value={card.value}
              choose={(next) => {
                card.value = next;
                read();
              }}
            />
            <Choice
              name={say.photoSpot}
              options={WIDE}
              value={wide.value}
              choose={(next) => {
                wide.value = next;
                read();
              }}
            />
          </>
        ) : null}
      </div>
    </details>
  );
}
