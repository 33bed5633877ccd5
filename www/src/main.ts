// Starts the page: the core, its worker, and the service worker.

import { coreModule, startWorker } from "#assets";
import init from "#core";
import { registerWorker } from "./register-worker";

const state = document.documentElement.dataset;

async function start(): Promise<void> {
  const module = await coreModule();
  await init({ module_or_path: module });
  state["core"] = "ready";
  const worker = startWorker();
  worker.addEventListener("message", () => (state["worker"] = "ready"), { once: true });
  worker.postMessage(module);
}

function say(text: string): void {
  const element = document.getElementById("state");
  if (element !== null) element.textContent = text;
}

start().catch((error: unknown) => say(`The planner did not start: ${String(error)}`));
registerWorker((accept) => {
  const button = document.querySelector<HTMLButtonElement>("[data-act=update]");
  if (button === null) return;
  button.hidden = false;
  button.addEventListener("click", accept, { once: true });
}).catch((error: unknown) => say(`Not kept for use offline: ${String(error)}`));
