// Starts the page: the core, what was last worked on or the link that was
// opened, and the service worker.

import { render } from "preact";

import { coreModule, startWorker } from "#assets";
import init, { __wbg_reset_state as afresh, Planner } from "#core";
import * as say from "#words";

import * as answers from "./answers";
import { App } from "./app";
import * as day from "./day/progress";
import { registerWorker } from "./register-worker";
import * as offered from "./offered";
import * as proposals from "./proposals";
import * as readings from "./readings";
import * as reply from "./reply";
import * as session from "./session";
import * as spare from "./spare";
import * as state from "./state";
import * as store from "./store";

async function start(): Promise<void> {
  const module = await coreModule();
  await init({ module_or_path: module });
  session.begin(() => new Planner(), afresh);
  readings.begin({
    start: startWorker,
    module,
    file: () => session.core().save_json(),
    show: session.showMarks,
    searched: proposals.searched,
  });
  proposals.begin();
  spare.begin({ start: startWorker, module });
  const payload = location.hash.slice(1);
  if (payload !== "") await readLink(payload);
  else await resume();
  // What was shown of a link until now.
  document.getElementById("early")?.remove();
  await readings.settled();
  document.documentElement.dataset["core"] = "ready";
}

/** Shows what a link holds; what was open here stays as it was kept. */
async function readLink(payload: string): Promise<void> {
  if (Planner.carries_answer(payload)) return answers.arrive(payload, resume);
  try {
    session.core().open_link(payload);
    session.read();
    offered.take(payload);
    await reply.begin();
    state.stage.value = "client";
  } catch (error) {
    await resume();
    state.fault.value = say.linkNotRead({ why: session.message(error) });
  }
}

/** Opens what was last worked on here, or the first visit. */
async function resume(): Promise<void> {
  const last = session.lastOpen();
  try {
    if (last !== null && (await session.openKept(last))) {
      state.stage.value = "work";
      await day.resume();
      return;
    }
  } catch (error) {
    state.fault.value = say.keptNotRead({ why: session.message(error) });
  }
  await session.firstVisit();
}

const root = document.getElementById("page");
if (root !== null) render(<App />, root);

start()
  .then(() => registerWorker((accept) => (state.newer.value = accept)))
  .then(() => store.askToStay())
  .catch((error: unknown) => {
    state.fault.value = say.notStarted({ why: session.message(error) });
  });
addEventListener("hashchange", () => {
  const payload = location.hash.slice(1);
  if (payload !== "") void session.settled().then(() => readLink(payload));
});
