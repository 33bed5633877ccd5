// The first visit: one sentence and one button; then what changed, and "Now yours".

import type { JSX } from "preact";
import { useEffect } from "preact/hooks";
import * as say from "#words";

import { Tape } from "../parts/controls";
import { Sample } from "../parts/lines";
import { useTaken } from "../parts/taken";
import * as readings from "../readings";
import * as session from "../session";
import * as state from "../state";

const UNROLL_MS = 420;
const CLOSE_MS = 240;

const share = (figure: number): string => `${Math.round(figure)}%`;
const still = (): boolean => matchMedia("(prefers-reduced-motion: reduce)").matches;

/** Lays what the first remedy lays, shows it unroll and says what that did. */
async function lay(key: string): Promise<void> {
  const before = state.report.value?.findings.find((finding) => finding.key === key);
  if (before === undefined || !session.remedy(key)) return;
  const thing = state.layout.value?.items.find((item) => item.id === before.about[0])?.name ?? say.thing;
  const figures = (now: number): void => {
    state.firstFigures.value = { key, thing, before: share(before.figure), now: share(now) };
  };
  figures(before.remedy?.after ?? 0);
  state.stage.value = "cured";
  if (!still()) unroll();
  await readings.settled();
  const now = state.report.value?.findings.find((finding) => finding.key === key);
  if (now !== undefined) figures(now.figure);
}

function unroll(): void {
  for (const group of document.querySelectorAll("[data-key^=linen-]")) {
    group.animate(
      [{ clipPath: "inset(0 50% 0 50%)" }, { clipPath: "inset(0 0 0 0)" }],
      { duration: UNROLL_MS, easing: "ease-out" },
    );
  }
  const marks = document.querySelector("[data-key=marks]");
  marks?.animate([{ opacity: 0 }, { opacity: 1 }], { duration: CLOSE_MS, delay: UNROLL_MS, fill: "backwards" });
}

/** The button that lays what the finding of this key wants. */
function Lay({ act, of }: { act: string; of: string }): JSX.Element {
  return (
    <button class="solid" {...useTaken(() => void lay(of))}>
      {act}
    </button>
  );
}

export function First(): JSX.Element {
  const first = state.firstFinding.value;
  // Where it could not be read there is a way on all the same.
  if (state.report.value === undefined && state.reading.value) {
    return <section class="say" aria-label={say.firstAsks} />;
  }
  if (!first?.remedy) {
    return (
      <section class="say">
        <p class="big">{say.firstNothing}</p>
        <button class="solid last" onClick={() => (state.stage.value = "yours")}>
          {say.nowYours}
        </button>
      </section>
    );
  }
  const { key, remedy, sentence } = first;
  return (
    <section class="say" aria-label={say.firstAsks}>
      <p class="big">{sentence}</p>
      <div class="last">
        <Lay act={remedy.act} of={key} />
      </div>
    </section>
  );
}

/** "It loses 21% now; it lost 74%", with the new figure in ink. */
function Was(): JSX.Element | null {
  const figures = state.firstFigures.value;
  if (figures === undefined) return null;
  const { thing, before, now } = figures;
  const [left, right] = say.firstLoses({ thing, before, now: "\n" }).split("\n");
  return (
    <p class="was">
      {left}
      <b class="figure">{now}</b>
      {right}
    </p>
  );
}

export function Cured(): JSX.Element {
  const undone = !state.undoable.value;
  useEffect(() => {
    if (!undone) return;
    // Taken back, the cure is offered as at first, once its figure is read again.
    void readings.settled().then(() => {
      if (state.undoable.value) return;
      state.firstFigures.value = undefined;
      state.stage.value = "first";
    });
  }, [undone]);
  const next = state.reading.value ? undefined : state.firstFinding.value;
  return (
    <section class="say" aria-label={say.firstChanged}>
      <Was />
      {next?.remedy ? (
        <div class="find">
          <Sample reading={next.reading} />
          <p class="big">{next.sentence}</p>
          <div>
            <Tape
              act={next.remedy.act}
              predicted={next.remedy.predicted}
              onClick={() => session.remedy(next.key)}
            />
          </div>
        </div>
      ) : null}
      <div class="last">
        <button class="solid" onClick={() => (state.stage.value = "yours")}>
          {say.nowYours}
        </button>
      </div>
    </section>
  );
}
