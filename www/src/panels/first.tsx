// The first visit: one sentence and one button; then what changed, and "Now yours".

import type { JSX } from "preact";

import { Sample } from "../parts/lines";
import { Tape } from "../parts/controls";
import * as session from "../session";
import * as state from "../state";

const UNROLL_MS = 420;
const CLOSE_MS = 240;

const share = (figure: number): string => `${Math.round(figure)}%`;
const still = (): boolean => matchMedia("(prefers-reduced-motion: reduce)").matches;

/** Lays what the first remedy lays, and shows it unroll. */
function lay(key: string, before: number): void {
  const after = state.report.value?.findings.find((finding) => finding.key === key)?.remedy;
  if (!session.remedy(key)) return;
  const now = state.report.value?.findings.find((finding) => finding.key === key);
  const figure = now?.figure ?? after?.after;
  state.firstFigures.value = {
    before: share(before),
    now: figure === undefined ? share(0) : share(figure),
  };
  state.stage.value = "cured";
  if (still()) return;
  for (const group of document.querySelectorAll("[data-key^=linen-]")) {
    group.animate(
      [{ clipPath: "inset(0 50% 0 50%)" }, { clipPath: "inset(0 0 0 0)" }],
      { duration: UNROLL_MS, easing: "ease-out" },
    );
  }
  const marks = document.querySelector("[data-key=marks]");
  marks?.animate([{ opacity: 0 }, { opacity: 1 }], { duration: CLOSE_MS, delay: UNROLL_MS, fill: "backwards" });
}

export function First(): JSX.Element {
  const first = session.firstFinding();
  if (first?.remedy === undefined || first.remedy === null) {
    return (
      <section class="say">
        <p class="big">A laid table, drawn true to size.</p>
        <button class="solid last" onClick={() => (state.stage.value = "yours")}>
          Now yours
        </button>
      </section>
    );
  }
  const { key, remedy, sentence, figure } = first;
  return (
    <section class="say" aria-label="What this table asks for">
      <p class="big">{sentence}</p>
      <div class="last">
        <button class="solid" onClick={() => lay(key, figure)}>
          {remedy.act}
        </button>
      </div>
    </section>
  );
}

export function Cured(): JSX.Element {
  const figures = state.firstFigures.value;
  const next = session.firstFinding();
  const hero = state.layout.value?.items.find((item) => item.role === "hero");
  const name = hero?.name.split(" ").at(-1) ?? "dish";
  return (
    <section class="say" aria-label="What changed">
      {figures === undefined ? null : (
        <p class="was">
          The {name} loses <b class="figure">{figures.now}</b> now; it lost {figures.before}.
        </p>
      )}
      {next?.remedy ? (
        <>
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
        </>
      ) : null}
      <div class="last">
        <button class="solid" onClick={() => (state.stage.value = "yours")}>
          Now yours
        </button>
      </div>
    </section>
  );
}
