// The page: the picture, and under it what the current place has to say.

import type { JSX } from "preact";

import type { Layout } from "./core";
import { Add } from "./panels/add";
import { CameraPanel } from "./panels/camera";
import { Client } from "./panels/client";
import { CropsPanel, Keeps } from "./panels/crops";
import { Findings } from "./panels/findings";
import { Cured, First } from "./panels/first";
import { Exposures, HandsPanel } from "./panels/hands";
import { PapersPanel } from "./panels/papers";
import { TablePanel } from "./panels/table";
import { ItemPanel, LinenPanel } from "./panels/thing";
import { Things, Which } from "./panels/things";
import { Yours } from "./panels/yours";
import { Grease, Rule } from "./parts/lines";
import { Picture } from "./picture";
import * as session from "./session";
import * as state from "./state";

const PLACES: readonly (readonly [state.Place, string])[] = [
  ["table", "Table"],
  ["hands", "Hands"],
  ["camera", "Camera & light"],
  ["crops", "Crops"],
  ["papers", "Papers"],
];

function Head({ layout }: { layout: Layout }): JSX.Element {
  return (
    <header class="head">
      <h1>{layout.title || "A laid table"}</h1>
      <span>{state.stage.value === "first" ? "" : state.saved.value}</span>
    </header>
  );
}

function Notices(): JSX.Element | null {
  const fault = state.fault.value;
  const newer = state.newer.value;
  if (fault === "" && newer === undefined && !state.readOnly.value) return null;
  return (
    <div class="notice">
      {state.readOnly.value ? <p>Another tab is working on this layout. Here it is only shown.</p> : null}
      {fault === "" ? null : (
        <>
          <p role="alert">{fault}</p>
          <button class="word" onClick={() => (state.fault.value = "")}>
            Understood
          </button>
        </>
      )}
      {newer === undefined ? null : (
        <button class="word" data-act="update" onClick={newer}>
          Use the newer page
        </button>
      )}
    </div>
  );
}

function Table({ layout }: { layout: Layout }): JSX.Element {
  const [item, linen] = [state.chosenItem.value, state.chosenLinen.value];
  return (
    <>
      <Which />
      {item !== undefined ? (
        <ItemPanel item={item} />
      ) : linen !== undefined ? (
        <LinenPanel linen={linen} />
      ) : (
        <Findings />
      )}
      <Add />
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

function Row(): JSX.Element {
  return (
    <div class="row">
      <span class="quiet">{state.lastAct.value}</span>
      <div>
        <button disabled={!state.undoable.value} onClick={() => session.undo()}>
          Undo
        </button>
        {state.stage.value === "work" ? (
          <button disabled={!state.redoable.value} onClick={() => session.redo()}>
            Redo
          </button>
        ) : null}
      </div>
    </div>
  );
}

function go(place: state.Place): void {
  state.place.value = place;
  state.stage.value = "work";
  if (place === "papers") void session.listKept();
}

function Places(): JSX.Element {
  return (
    <nav class="places" aria-label="Places">
      {PLACES.map(([place, name]) => {
        const here = state.place.value === place;
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
    <main class={`sheet planner ${stage}`}>
      <Notices />
      <Head layout={layout} />
      <Picture />
      <Rule />
      {stage === "first" ? <First /> : null}
      {stage === "cured" ? <Cured /> : null}
      {stage === "yours" ? <Yours /> : null}
      {stage === "work" ? (
        <section class="say">
          <Say layout={layout} />
          {state.place.value === "table" ? (
            <div class="aside">
              <Exposures />
              <Keeps layout={layout} />
            </div>
          ) : null}
        </section>
      ) : null}
      {stage === "first" ? null : <Row />}
      {stage === "first" ? null : <Places />}
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
          {state.fault.value || "Laying the table…"}
        </p>
      </main>
    );
  }
  return state.stage.value === "client" ? <Client layout={layout} /> : <Planner layout={layout} />;
}
