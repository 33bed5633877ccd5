// The page: the picture, and under it what the current place has to say.

import { batch } from "@preact/signals";
import type { JSX, RefObject } from "preact";
import { useEffect, useRef } from "preact/hooks";
import * as say from "#words";

import { painted } from "./after";
import * as beside from "./beside";
import type { Layout } from "./core";
import { keyed } from "./focus";
import { Add } from "./panels/add";
import { Arrived, Remarks } from "./panels/answered";
import { Beside } from "./panels/beside";
import { CameraPanel } from "./panels/camera";
import { Client } from "./panels/client";
import { CropsPanel, Keeps } from "./panels/crops";
import { Day } from "./panels/day";
import { Findings } from "./panels/findings";
import { Cured, First } from "./panels/first";
import { Guide, open as guide } from "./panels/guide";
import { Exposures, HandsPanel, OneHand } from "./panels/hands";
import { PapersPanel } from "./panels/papers";
import { Propose } from "./panels/propose";
import { Settings } from "./panels/settings";
import { Sights, Through } from "./panels/sight";
import { isOn, Several } from "./panels/several";
import { Strew } from "./panels/strew";
import { Start } from "./panels/start";
import { TablePanel } from "./panels/table";
import { ItemPanel, LinenPanel } from "./panels/thing";
import { Things, Which } from "./panels/things";
import { Yours } from "./panels/yours";
import { Anew } from "./parts/arranged";
import * as later from "./parts/later";
import { Grease, Rule } from "./parts/lines";
import { Notices } from "./parts/notices";
import { ScoreLine } from "./parts/scores";
import { Picture } from "./picture";
import { Printed } from "./printed";
import * as several from "./several";
import * as session from "./session";
import * as state from "./state";

const PLACES: readonly (readonly [state.Place, string])[] = [
  ["table", say.placeTable],
  ["hands", say.placeHands],
  ["camera", say.placeCamera],
  ["crops", say.placeCrops],
  ["papers", say.placePapers],
];

/** Where a new table is begun. */
const STARTS: readonly state.Stage[] = ["new", "yours", "empty"];
/** Stages that look as others do. */
const LIKE: Partial<Record<state.Stage, state.Stage>> = { new: "work", empty: "yours" };

function Head({ layout }: { layout: Layout }): JSX.Element {
  return (
    <header class="head">
      <h1>{layout.title || say.untitledTable}</h1>
      <span>{state.stage.value === "first" || state.fromNewer.value ? "" : state.saved.value}</span>
      {state.stage.value === "first" ? null : (
        <button onClick={() => (guide.value = true)}>{say.guide}</button>
      )}
    </header>
  );
}

/** What is chosen on the picture, with what can be done to it. */
function Chosen(): JSX.Element | null {
  const [item, linen, hand] = [
    state.chosenItem.value, state.chosenLinen.value, state.chosenHand.value,
  ];
  if (state.live.value !== undefined) return null;
  if (item !== undefined) return <ItemPanel item={item} />;
  if (linen !== undefined) return <LinenPanel linen={linen} />;
  return hand === undefined ? null : <OneHand hand={hand} />;
}

/** What is picked, with what can be done to all of it. */
const Many = (): JSX.Element | null => (state.live.value === undefined ? <Several /> : null);

/** What is begun here whatever is chosen. */
function Begin(): JSX.Element {
  const { adding, arranging } = state;
  return (
    <div class="steps begin">
      <button class="word" onClick={() => {
          several.leave();
          adding.value = !adding.value;
        }}>
        {adding.value ? say.addDone : say.add}
      </button>
      {state.arrangeable.value ? (
        <button class="word" aria-expanded={arranging.value} onClick={() => (arranging.value = !arranging.value)}>
          {say.arrangeAnew}
        </button>
      ) : null}
      <button class="word" onClick={several.start}>
        {say.pick}
      </button>
    </div>
  );
}

function Table({ layout }: { layout: Layout }): JSX.Element {
  if (state.adding.value) {
    return (
      <>
        <h2 class="away">{say.placeTable}</h2>
        <Begin />
        <Add />
      </>
    );
  }
  return (
    <>
      <h2 class="away">{say.placeTable}</h2>
      <Arrived layout={layout} />
      {isOn() ? (
        <Many />
      ) : (
        <>
          <Begin />
          {state.arranging.value && state.arrangeable.value ? <Anew /> : null}
          <Which />
          <Chosen />
        </>
      )}
      <Remarks layout={layout} />
      <Findings />
      <Propose />
      <Exposures />
      <Through />
      <Sights />
      <Keeps layout={layout} />
      <Settings />
      <Strew />
      <TablePanel layout={layout} />
      <Things />
    </>
  );
}

function Say({ layout }: { layout: Layout }): JSX.Element {
  switch (state.place.value) {
    case "table":
      return <Table layout={layout} />;
    case "hands":
      return <HandsPanel layout={layout} />;
    case "camera":
      return <CameraPanel layout={layout} />;
    case "crops":
      return <CropsPanel layout={layout} />;
    case "papers":
      return <PapersPanel layout={layout} />;
  }
}

/** Has what is done with the thing a finger chose in sight: the list that was tapped lies far below it. */
function Brought({ within }: { within: RefObject<HTMLElement | null> }): null {
  const chosen = state.chosen.value;
  useEffect(() => {
    // By key the focus is what stays in sight; where the whole page scrolls, the picture does.
    const scrolls = within.current !== null && getComputedStyle(within.current).overflowY !== "visible";
    if (chosen === undefined || keyed() || !scrolls) return;
    within.current?.querySelector(".chosen-strip > .line")?.scrollIntoView({ block: "nearest" });
  }, [chosen]);
  // A place begins at its beginning, wherever the one before was read.
  useEffect(() => within.current?.scrollTo(0, 0), [within, state.place.value]);
  return null;
}

function Work({ layout }: { layout: Layout }): JSX.Element {
  const own = useRef<HTMLElement>(null);
  return (
    <section class="say" ref={own}>
      <Brought within={own} />
      <Say layout={layout} />
    </section>
  );
}

function Row(): JSX.Element {
  return (
    <div class="row">
      <span class="quiet">{state.lastAct.value}</span>
      <div>
        <button disabled={!state.undoable.value} onClick={() => session.undo()}>
          {say.undo}
        </button>
        {state.stage.value === "work" ? (
          <button disabled={!state.redoable.value} onClick={() => session.redo()}>
            {say.redo}
          </button>
        ) : null}
      </div>
    </div>
  );
}

/** Marks a place as the one gone to, then shows it. */
function go(place: state.Place): void {
  state.going.value = place;
  painted(() => {
    if (state.going.value === place) arrive(place);
  });
}

function arrive(place: state.Place): void {
  if (place !== "table") several.leave();
  if (place === "papers" && state.place.value !== place) later.going();
  batch(() => {
    // Cards are chosen where they are shown.
    if (place !== "camera" && session.core().is_card(state.chosen.value ?? 0)) session.choose(undefined);
    state.putting.value = undefined;
    state.going.value = undefined;
    state.place.value = place;
    state.stage.value = "work";
  });
  if (place === "papers") void session.listKept();
}

function Places(): JSX.Element {
  return (
    <nav class="places" aria-label={say.places}>
      {PLACES.map(([place, name]) => {
        const at = STARTS.includes(state.stage.value) ? undefined : state.place.value;
        const here = (state.going.value ?? at) === place;
        return (
          <button key={place} aria-current={here ? "page" : undefined} onClick={() => go(place)}>
            {name}
            {here ? <Grease /> : null}
          </button>
        );
      })}
    </nav>
  );
}

function Planner({ layout }: { layout: Layout }): JSX.Element {
  const stage = state.stage.value;
  return (
    <main class={`sheet planner ${LIKE[stage] ?? stage}`}>
      <Notices />
      <Head layout={layout} />
      <Picture />
      {stage === "work" ? <ScoreLine /> : null}
      <Rule />
      {stage === "first" ? <First /> : null}
      {stage === "cured" ? <Cured /> : null}
      {stage === "new" ? <Start /> : null}
      {stage === "yours" || stage === "empty" ? <Yours key={stage} empty={stage === "empty"} /> : null}
      {stage === "work" ? <Work layout={layout} /> : null}
      {stage === "first" || STARTS.includes(stage) ? null : <Row />}
      {stage === "first" ? null : <Places />}
      <Guide />
      <p class="away" role="status">
        {state.said.value}
      </p>
    </main>
  );
}

export function App(): JSX.Element {
  const layout = state.layout.value;
  if (layout === undefined) {
    return (
      <main class="sheet">
        <p class="say" role="status">
          {state.fault.value || say.layingTable}
        </p>
      </main>
    );
  }
  if (state.stage.value === "day") return <Day layout={layout} />;
  const sides = beside.sides.value;
  if (sides !== undefined) return <Beside sides={sides} />;
  return (
    <>
      {state.stage.value === "client" ? <Client layout={layout} /> : <Planner layout={layout} />}
      <Printed layout={layout} />
    </>
  );
}
