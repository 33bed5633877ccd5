// Ways to look at the picture that judge tone, masses and balance: without
// colour, squinting, in a mirror. Nothing of this is in a file or on paper.

import type { JSX } from "preact";
import * as say from "#words";

import type { Layout } from "../core";
import * as state from "../state";

type Frame = Layout["frame"];

const SIGHTS: readonly (readonly [state.Sight, string])[] = [
  ["plain", say.sightPlain],
  ["grey", say.sightGrey],
  ["squint", say.sightSquint],
  ["mirror", say.sightMirror],
];
/** The squint blurs by this part of the frame's width. */
const SQUINT = 1 / 50;

export function Sights(): JSX.Element {
  return (
    <div class="steps" role="group" aria-label={say.sight}>
      {SIGHTS.map(([value, label]) => (
        <button
          key={value}
          aria-pressed={state.sight.value === value}
          onClick={() => (state.sight.value = value)}
        >
          {label}
        </button>
      ))}
    </div>
  );
}

/** From above, where things are moved, or as the lens will see them. */
export function Through(): JSX.Element {
  const ways = [
    [false, say.fromAbove],
    [true, say.throughLens],
  ] as const;
  return (
    <div class="steps" role="group" aria-label={say.seenFrom}>
      {ways.map(([lens, label]) => (
        <button key={label} aria-pressed={state.lens.value === lens} onClick={() => (state.lens.value = lens)}>
          {label}
        </button>
      ))}
    </div>
  );
}

/** Grey of the same luminance, so of the same L*, and a blur in mm of the table. */
export function Filters({ frame }: { frame: Frame | undefined }): JSX.Element {
  return (
    <defs>
      <filter id="sight-grey" color-interpolation-filters="linearRGB">
        <feColorMatrix values=".2126 .7152 .0722 0 0 .2126 .7152 .0722 0 0 .2126 .7152 .0722 0 0 0 0 0 1 0" />
      </filter>
      <filter id="sight-squint">
        <feGaussianBlur stdDeviation={(frame?.width ?? 0) * SQUINT} />
      </filter>
    </defs>
  );
}

/** What is set on the drawing to be looked at this way. */
interface Seen {
  class?: string;
  filter?: string;
  transform?: string;
}

export function seenAs(sight: state.Sight, frame: Frame | undefined): Seen {
  switch (sight) {
    case "plain":
      return {};
    case "mirror":
      return { class: "mirrored", transform: `translate(${2 * (frame?.at[0] ?? 0)} 0) scale(-1 1)` };
    default:
      return { class: sight, filter: `url(#sight-${sight})` };
  }
}
