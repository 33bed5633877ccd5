// Native controls with their words.

import type { ComponentChildren, JSX, RefObject } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";
import * as say from "#words";

import { useTaken } from "./taken";

/** A big tap-and-step way to set a figure. */
export function Stepper(props: {
  name: string;
  value: string;
  less: string;
  more: string;
  step: (by: -1 | 1) => void;
}): JSX.Element {
  return (
    <div class="line" role="group" aria-label={props.name}>
      <span class="name">{props.name}</span>
      <span class="stepper">
        <button type="button" aria-label={props.less} onClick={() => props.step(-1)}>
          −
        </button>
        <output>{props.value}</output>
        <button type="button" aria-label={props.more} onClick={() => props.step(1)}>
          +
        </button>
      </span>
    </div>
  );
}

/** A row of words of which one is current. */
export function Choice<T extends string>(props: {
  name: string;
  options: readonly (readonly [T, string])[];
  value: T | undefined;
  choose: (value: T) => void;
}): JSX.Element {
  return (
    <div class="field" role="group" aria-label={props.name}>
      <span>{props.name}</span>
      <div class="steps">
        {props.options.map(([value, label]) => (
          <button
            // In a form it chooses and sends nothing.
            type="button"
            key={value}
            aria-pressed={value === props.value}
            onClick={() => props.choose(value)}
          >
            {label}
          </button>
        ))}
      </div>
    </div>
  );
}

/**
 * A field that holds `value` when that changes; what is being written in it is
 * left alone, whatever else of the page is drawn anew meanwhile.
 */
export function useHeld<E extends { value: string }>(value: string): RefObject<E | null> {
  const field = useRef<E>(null);
  useLayoutEffect(() => {
    if (field.current !== null) field.current.value = value;
  }, [value]);
  return field;
}

/** A field of text, taken over when it is left. */
export function Field(props: {
  name: string;
  value: string;
  take: (value: string) => void;
  mode?: "text" | "decimal" | "search";
}): JSX.Element {
  return (
    <label class="field">
      <span>{props.name}</span>
      <input
        ref={useHeld<HTMLInputElement>(props.value)}
        inputMode={props.mode ?? "text"}
        maxLength={say.MAX_NAME}
        onChange={(event) => props.take(event.currentTarget.value)}
      />
    </label>
  );
}

/** A field to search by, followed as it is typed. */
export function Search(props: { name: string; value: string; take: (value: string) => void }): JSX.Element {
  return (
    <label class="field">
      <span>{props.name}</span>
      <input
        type="search"
        maxLength={say.MAX_NAME}
        value={props.value}
        onInput={(event) => props.take(event.currentTarget.value)}
      />
    </label>
  );
}

/** A field of several lines, taken over when it is left. */
export function Note(props: {
  name: string;
  value: string;
  take: (value: string) => void;
}): JSX.Element {
  return (
    <label class="field">
      <span>{props.name}</span>
      <textarea
        ref={useHeld<HTMLTextAreaElement>(props.value)}
        rows={3}
        maxLength={say.MAX_NOTE}
        onChange={(event) => props.take(event.currentTarget.value)}
      />
    </label>
  );
}

/** A colour, by the browser's own picker. */
export function Colour(props: {
  name: string;
  value: string;
  take: (value: string) => void;
}): JSX.Element {
  return (
    <label class="line">
      <span class="name">{props.name}</span>
      <input
        type="color"
        value={props.value}
        onChange={(event) => props.take(event.currentTarget.value)}
      />
    </label>
  );
}

/** Neutral tones to pick from, named for those who cannot tell them by eye. */
export function Tones(props: {
  name: string;
  tones: readonly (readonly [string, string])[];
  value: string;
  choose: (value: string) => void;
}): JSX.Element {
  return (
    <div class="field" role="group" aria-label={props.name}>
      <span>{props.name}</span>
      <div class="tones">
        {props.tones.map(([tone, label]) => (
          <button
            type="button"
            key={tone}
            aria-label={label}
            aria-pressed={tone === props.value}
            onClick={() => props.choose(tone)}
          >
            <svg viewBox="0 0 36 36" aria-hidden="true">
              <path d="M2 4L33 2 35 33 3 35z" fill={tone} />
            </svg>
          </button>
        ))}
      </div>
    </div>
  );
}

export function Panel(props: { title: string; children: ComponentChildren }): JSX.Element {
  return (
    <section class="panel" aria-label={props.title}>
      <h2>{props.title}</h2>
      {props.children}
    </section>
  );
}

/** A remedy or act on a strip of tape. */
export function Tape(props: {
  act: string;
  predicted?: string | undefined;
  onClick: () => void;
}): JSX.Element {
  return (
    <button class="tape" {...useTaken(props.onClick)}>
      <span>{props.act}</span>
      {props.predicted === undefined || props.predicted === "" ? null : <i>{props.predicted}</i>}
    </button>
  );
}
