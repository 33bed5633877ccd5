// The steps of the shoot day, one at a time over the locked layout, to be read
// from a step away and ticked with a knuckle.

import { useSignal } from "@preact/signals";
import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import type { JSX } from "preact";
import * as say from "#words";

import type { Layout } from "../core";
import * as awake from "../day/awake";
import * as day from "../day/progress";
import { Field, Note, Stepper } from "../parts/controls";
import * as session from "../session";
import { does } from "./order";

const SECOND = 1000;

/** A time left or past as minutes and seconds. */
function clock(ms: number): string {
  const seconds = Math.floor(Math.abs(ms) / SECOND);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}

/** The food whose time runs. */
function Timers({ now }: { now: number }): JSX.Element | null {
  const timers = [...(day.progress.value?.timers ?? [])];
  if (timers.length === 0) return null;
  timers.sort((a, b) => day.left(a, now) - day.left(b, now));
  return (
    <ul class="timers" aria-label={say.dayTimers}>
      {timers.map((timer) => {
        const ms = day.left(timer, now);
        const time = clock(ms);
        return (
          <li key={timer.item} class={ms <= 0 ? "past" : undefined}>
            <span>{timer.name}</span>
            <b>{ms <= 0 ? say.dayOver({ time }) : say.dayLeft({ time })}</b>
          </li>
        );
      })}
    </ul>
  );
}

/** The table as it is in the exposure, with its hands. */
function Shown({ layout, exposure, name }: { layout: Layout; exposure: number; name: string }): JSX.Element {
  const root = useRef<SVGSVGElement>(null);
  useLayoutEffect(() => {
    if (root.current !== null) session.core().draw_exposure(root.current, exposure);
  }, [layout, exposure]);
  return <svg class="now" ref={root} role="img" aria-label={name} />;
}

function Ticks({ ticks }: { ticks: readonly day.Tick[] }): JSX.Element {
  const done = day.progress.value?.ticks ?? [];
  return (
    <ul class="ticks">
      {ticks.map((tick) => (
        <li key={tick.key}>
          <label>
            <input type="checkbox" checked={done.includes(tick.key)} onChange={() => day.tick(tick)} />
            <span>{tick.text}</span>
          </label>
        </li>
      ))}
    </ul>
  );
}

/** What was shot of this exposure; nothing has to be typed. */
function Log({ exposure }: { exposure: number }): JSX.Element {
  const shot = day.shot(exposure);
  return (
    <>
      <Stepper
        name={say.dayFrames}
        value={String(shot.frames)}
        less={say.dayFramesLess}
        more={say.dayFramesMore}
        step={(by) => day.log(exposure, { frames: Math.max(0, shot.frames + by) })}
      />
      <ul class="ticks">
        <li>
          <label>
            <input
              type="checkbox"
              checked={shot.kept}
              onChange={() => day.log(exposure, { kept: !shot.kept })}
            />
            <span>{say.dayKept}</span>
          </label>
        </li>
      </ul>
      <details>
        <summary>{say.dayFile}</summary>
        <Field name={say.dayFileName} value={shot.file} take={(file) => day.log(exposure, { file })} />
        <Note name={say.dayNote} value={shot.note} take={(note) => day.log(exposure, { note })} />
      </details>
    </>
  );
}

export function Day({ layout }: { layout: Layout }): JSX.Element {
  const now = useSignal(Date.now());
  const text = useRef<HTMLElement>(null);
  useEffect(() => awake.begin((ms) => (now.value = ms)), []);
  const at = day.place();
  const step = day.steps.value[at];
  useEffect(() => {
    awake.quiet();
    text.current?.scrollTo(0, 0);
    text.current?.focus();
  }, [at]);
  if (step === undefined) return <p role="status">{say.dayNone}</p>;
  const exposure = step.exposure ?? undefined;
  const shooting = step.kind === "shoot";
  const hands = shooting && exposure !== undefined ? does(layout, exposure) : [];
  const doing = shooting ? [...hands, ...step.lines] : [];
  const care = shooting ? [] : step.lines;
  const spoken = [step.title, ...doing, ...step.ticks.map(({ text }) => text), ...care, ...step.due];
  const count = day.steps.value.length;
  const go = (by: -1 | 1): void => {
    awake.mayRing();
    if (by === 1 && at === count - 1) day.leave();
    else day.go(by);
  };
  return (
    <main class="day sheet">
      <header>
        <span>{say.dayStep({ step: String(at + 1), all: String(count) })}</span>
        <b class="sans">{step.time}</b>
        <button onClick={day.leave}>{say.dayLeave}</button>
      </header>
      <Timers now={now.value} />
      {day.told.value === "" ? null : (
        <div class="told" role="alert">
          <p>{day.told.value}</p>
          <button class="word" onClick={() => (day.told.value = "")}>
            {say.dayHeard}
          </button>
        </div>
      )}
      <section class="step" ref={text} tabIndex={-1} aria-label={step.title}>
        <h1>{step.title}</h1>
        {exposure === undefined ? null : <Shown layout={layout} exposure={exposure} name={step.title} />}
        {doing.map((line) => (
          <p key={line}>{line}</p>
        ))}
        {step.due.length === 0 ? null : <p class="quiet">{step.due.join("; ")}</p>}
        <Ticks ticks={step.ticks} />
        {shooting && exposure !== undefined ? <Log key={exposure} exposure={exposure} /> : null}
        {care.map((line) => (
          <p key={line} class="caution">
            {line}
          </p>
        ))}
      </section>
      <nav aria-label={say.daySteps}>
        <button disabled={at === 0} onClick={() => go(-1)}>
          {say.dayBack}
        </button>
        <button onClick={() => awake.speak(spoken)}>
          {say.dayAloud}
        </button>
        <button class="solid" onClick={() => go(1)}>
          {at === count - 1 ? say.dayEnd : say.dayNext}
        </button>
      </nav>
    </main>
  );
}

/** Where the day is begun, gone on with, or begun anew. */
export function DayPart({ layout }: { layout: Layout }): JSX.Element {
  const sure = useSignal(false);
  useEffect(() => void day.load(), [layout]);
  const count = day.steps.value.length;
  const done = day.progress.value;
  const begun = done !== undefined && (done.ticks.length > 0 || day.place() > 0 || Object.keys(done.log).length > 0);
  const restart = (): void => {
    if (sure.value) day.restart();
    sure.value = !sure.value;
  };
  return (
    <section class="panel" aria-label={say.daySteps}>
      <h3>{say.daySteps}</h3>
      {count === 0 ? (
        <p class="quiet">{say.dayNone}</p>
      ) : (
        <>
          <p class="quiet">{say.dayWhat}</p>
          <button
            class="tape"
            onClick={() => {
              awake.mayRing();
              day.open();
            }}
          >
            {begun ? say.dayGoOn({ step: String(day.place() + 1), all: String(count) }) : say.dayBegin}
          </button>
          {begun ? (
            <button class="word" onClick={restart} onBlur={() => (sure.value = false)}>
              {sure.value ? say.dayRestartSure : say.dayRestart}
            </button>
          ) : null}
          <p class="quiet">{say.dayLocked}</p>
        </>
      )}
    </section>
  );
}
