// The plan over a test photo: things are told by taps, the plan lies over the
// photo, and what stands elsewhere is measured. A second frame shows a bump.

import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { JSX } from "preact";
import * as say from "#words";

import type { Layout } from "../core";
import { enlarge, within } from "../crosshair";
import type { Spot } from "../crosshair";
import { Choice } from "../parts/controls";
import { Shot } from "../parts/shot";
import { drawPhoto } from "../photo";
import * as session from "../session";
import * as test from "../test-frame";

const PICTURES: readonly (readonly [test.Which, string])[] = [
  ["first", say.bumpFirst],
  ["second", say.bumpSecond],
  ["apart", say.bumpApart],
];

/** What a tap tells next: a mark until the plan lies well, then a thing to be measured. */
type Aim = "mark" | "thing";

/** What was measured, with a way to take it over. */
function Drifts(): JSX.Element | null {
  if (test.drifts.value.length === 0) return null;
  return (
    <ul class="drifts" aria-label={say.testDrifts}>
      {test.drifts.value.map((drift) => (
        <li key={drift.id}>
          <span>{drift.sentence}</span>
          <button class="word" onClick={() => test.follow(drift)}>
            {say.testFollow}
          </button>
        </li>
      ))}
    </ul>
  );
}

export function TestFrame({ layout }: { layout: Layout }): JSX.Element {
  const [first, second, shown, lens] = [
    useRef<HTMLCanvasElement>(null),
    useRef<HTMLCanvasElement>(null),
    useRef<HTMLCanvasElement>(null),
    useRef<HTMLCanvasElement>(null),
  ];
  const there = useSignal(false);
  const at = useSignal<Spot>([0, 0]);
  const aim = useSignal<Aim>("mark");
  const picked = useSignal(0);
  const things = session.core().tellable() as test.Told[];

  const away = (): void => {
    for (const { current } of [first, second, shown]) {
      // Some browsers hold a canvas's pixels long after the page has let it go.
      if (current !== null) [current.width, current.height] = [0, 0];
    }
    [there.value, aim.value, picked.value] = [false, "mark", things[0]?.id ?? 0];
    test.forget();
  };
  useEffect(() => away, []);

  /** The thing a tap is offered for next. */
  const next = (): void => {
    const told = aim.value === "mark" ? test.marks.value : [...test.marks.value, ...test.drifts.value];
    picked.value = things.find(({ id }) => !told.some((each) => each.id === id))?.id ?? things[0]?.id ?? 0;
  };
  const open = async (input: HTMLInputElement): Promise<void> => {
    const [file] = input.files ?? [];
    const [photo, on] = [first.current, shown.current];
    if (file === undefined || photo === null || on === null) return;
    input.value = "";
    away();
    try {
      await drawPhoto(file, photo);
      test.show("first", photo, photo, on);
      there.value = true;
      next();
      look([photo.width / 2, photo.height / 2]);
    } catch (error) {
      away();
      test.fault.value = session.message(error);
    }
  };
  const again = (input: HTMLInputElement): void => {
    const [file] = input.files ?? [];
    input.value = "";
    if (file && first.current && second.current) void test.compare(file, first.current, second.current);
  };
  const look = (spot: Spot): void => {
    if (first.current === null) return;
    at.value = within(first.current, spot);
    enlarge(first.current, at.value, lens.current);
  };
  const tell = (): void => {
    const photo = first.current;
    if (photo === null) return;
    const mark = { id: picked.value, spot: at.value };
    if (aim.value === "mark") test.tell(mark, photo);
    else test.look(mark);
    if (test.marks.value.length === test.MOST) aim.value = "thing";
    next();
  };

  const name = things.find(({ id }) => id === picked.value)?.name ?? "";
  const laid = test.over.value;
  return (
    <section class="panel" aria-label={say.test}>
      <h3>{say.test}</h3>
      <p class="quiet">{say.testWhat}</p>
      <label class="field">
        <span>{say.testChoose}</span>
        <input type="file" accept="image/*" onChange={(event) => void open(event.currentTarget)} />
      </label>
      <canvas ref={first} hidden width="0" height="0" />
      <canvas ref={second} hidden width="0" height="0" />
      <Shot
        name={say.testKeys}
        hidden={!there.value}
        shown={shown}
        lens={lens}
        size={[first.current?.width || 1, first.current?.height || 1]}
        at={at.value}
        marks={test.marks.value.map(({ spot }) => spot)}
        look={look}
        tap={tell}
      >
        {laid === undefined ? null : <path class="plan" d={laid.path} />}
      </Shot>
      {test.fault.value === "" ? null : <p role="alert">{test.fault.value}</p>}
      {there.value ? (
        <>
          <p role="status">
            {aim.value === "mark"
              ? say.testTapMark({ thing: name, number: String(Math.min(test.MOST, test.marks.value.length + 1)) })
              : say.testTapThing({ thing: name })}
          </p>
          <label class="field">
            <span>{say.testThing}</span>
            <select value={picked.value} onChange={(event) => (picked.value = Number(event.currentTarget.value))}>
              {things.map((thing) => (
                <option key={thing.id} value={thing.id}>
                  {thing.name}
                </option>
              ))}
            </select>
          </label>
          {laid === undefined ? null : (
            <Choice
              name={say.testNext}
              options={[
                ["mark", say.testMark],
                ["thing", say.testMeasure],
              ]}
              value={aim.value}
              choose={(to) => {
                aim.value = to;
                next();
              }}
            />
          )}
          {test.marks.value.length === 0 ? null : (
            <button
              class="word"
              onClick={() => {
                if (first.current !== null) test.takeBack(first.current);
                aim.value = "mark";
                next();
              }}
            >
              {say.testBack}
            </button>
          )}
          {laid?.frame ? <p>{laid.frame.sentence}</p> : null}
          <Drifts />
          {laid === undefined ? null : (
            <>
              <label class="field">
                <span>{say.bumpChoose}</span>
                <input type="file" accept="image/*" onChange={(event) => again(event.currentTarget)} />
              </label>
              {test.bump.value === undefined ? null : (
                <>
                  <p role="status">
                    {test.bump.value.sentence} {test.bump.value.light}
                  </p>
                  <Choice
                    name={say.bumpShow}
                    options={PICTURES}
                    value={test.which.value}
                    choose={(to) => {
                      const [a, b, on] = [first.current, second.current, shown.current];
                      if (a && b && on) test.show(to, a, b, on);
                    }}
                  />
                </>
              )}
            </>
          )}
          <button class="word" onClick={away}>
            {say.testAway}
          </button>
        </>
      ) : null}
      {layout.items.length < test.LEAST ? <p class="quiet">{say.testFew}</p> : null}
    </section>
  );
}
