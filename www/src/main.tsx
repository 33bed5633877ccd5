// Starts the page: the core, what was last worked on or the link that was
// opened, and the service worker.

import { render } from "preact";

import { coreModule, startWorker } from "#assets";
import init, { Planner } from "#core";

import { App } from "./app";
import { registerWorker } from "./register-worker";
import * as session from "./session";
import * as state from "./state";
import * as store from "./store";

const marks = document.documentElement.dataset;

async function start(): Promise<void> {
  const module = await coreModule();
  await init({ module_or_path: module });
  const worker = startWorker();
  worker.addEventListener("message", () => (marks["worker"] = "ready"), { once: true });
  worker.postMessage(module);
  session.begin(() => new Planner());
  const payload = location.hash.slice(1);
  if (payload !== "") await readLink(payload);
  else await resume();
  marks["core"] = "ready";
}

/** Shows what a link holds; what was open here stays as it was kept. */
async function readLink(payload: string): Promise<void> {
  try {
    session.core().open_link(payload);
    session.refresh();
    state.stage.value = "client";
  } catch (error) {
    await resume();
    state.fault.value = `The link could not be read (${session.message(error)}). Nothing here was changed; ask for it again, or for the file.`;
  }
}

/** Opens what was last worked on here, or the first visit. */
async function resume(): Promise<void> {
  const last = session.lastOpen();
  try {
    if (last !== null && (await session.openKept(last))) {
      state.stage.value = "work";
      return;
    }
  } catch (error) {
    state.fault.value = `What was kept here could not be read (${session.message(error)}). Here is the first table; nothing kept was removed.`;
  }
  await session.firstVisit();
}

const root = document.getElementById("page");
if (root !== null) render(<App />, root);

start()
  .then(() => registerWorker((accept) => (state.newer.value = accept)))
  .then(() => store.askToStay())
  .catch((error: unknown) => {
    state.fault.value = `The planner did not start: ${session.message(error)}. Nothing kept here was changed; reload to try again.`;
  });
addEventListener("hashchange", () => {
  const payload = location.hash.slice(1);
  if (payload !== "") void session.settled().then(() => readLink(payload));
});
