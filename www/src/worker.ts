// The worker: an instance of the core of its own, so that readings never hold
// up the hand that drags.

import { initSync } from "#core";

addEventListener("message", (event: MessageEvent<WebAssembly.Module>) => {
  initSync({ module: event.data });
  postMessage("ready");
}, { once: true });
