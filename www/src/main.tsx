// Starts the page: the core, what was last worked on or the link that was
// opened, and the service worker.

import { render } from "preact";

import { coreModule, startWorker } from "#assets";
import init, { __wbg_reset_state as afresh, Planner } from "#core";
import * as say from "#words";

import * as answers from "./answers";
import { App } from "./app";
import * as day from "./day/progress";
import * as focus from "./focus";
import { registerWorker } from "./register-worker";
import * as offered from "./offered";
import * as proposals from "./proposals";
import * as readings from "./readings";
import * as reply from "./reply";
import * as resume from "./resume";
import * as session from "./session";
import * as spare from "./spare";
import * as state from "./state";
import * as store from "./store";

async function start(): Promise<void> {
  const module = await coreModule();
  await init({ module_or_path: module });
  session.begin(() => new Planner(), afresh, (error) => void resume.fallen(error).catch(notStarted));
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
  else await resumed();
  // What was shown of a link until now.
  document.getElementById("early")?.remove();
  await readings.settled();
  document.documentElement.dataset["core"] = "ready";
}

/** Shows what a link holds; what was open here stays as it was kept. */
async function readLink(payload: string): Promise<void> {
  if (Planner.carries_answer(payload)) return answers.arrive(payload, resumed);
  const before = state.layout.value;
  try {
    session.openLink(payload);
    offered.take(payload);
    await reply.begin();
    if (!session.linked) return;
    state.stage.value = "client";
  } catch (error) {
    // What is open may hold more than could be kept of it.
    const open = state.stage.value === "work" && state.layout.value === before;
    if (session.isFall(error)) {
      if (open) session.goOn();
      else session.renew();
    }
    if (!open) await resumed();
    state.fault.value = say.linkNotRead({ why: session.message(error) });
  }
}

/** Opens what was last worked on here, or the first visit. */
async function resumed(): Promise<void> {
  await resume.last();
  if (state.stage.value === "work") await day.resume();
}

/** Waits until no finger is on the picture and every act is kept. */
const atRest = (): Promise<void> =>
  state.touched.value ? new Promise((resolve) => setTimeout(resolve, 100)).then(atRest) : session.settled();

function notStarted(error: unknown): void {
  state.fault.value = say.notStarted({ why: session.message(error) });
}

const root = document.getElementById("page");
if (root !== null) {
  focus.watch(root);
  render(<App />, root);
}

/** Has what there is stay here; a browser that refuses that has the page as well without. */
const stay = (): Promise<unknown> =>
  registerWorker((accept) => (state.newer.value = accept), atRest)
    .catch(() => undefined)
    .then(() => store.askToStay())
    .catch(() => undefined);

start().then(stay, notStarted);
addEventListener("hashchange", () => {
  const payload = location.hash.slice(1);
  if (payload !== "") void session.settled().then(() => readLink(payload));
});
