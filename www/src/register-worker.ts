// Registers the service worker and says when a newer page is ready. It never
// reloads by itself: the person decides when, and what is in hand ends first.

import { serviceWorkerUrl } from "#assets";
import { workerAddress } from "./trusted-address";

/** Switches to the newer page: the waiting worker takes over, then this page reloads. */
type Accept = () => void;

/**
 * Registers the service worker, if this page can have one.
 *
 * `onUpdate` is called when a newer page lies ready, with what to call once the
 * person agrees; until then everything goes on with the page as it is. `rest`
 * waits until nothing would be lost.
 */
export async function registerWorker(onUpdate: (accept: Accept) => void, rest: () => Promise<void>): Promise<void> {
  const container = navigator.serviceWorker as ServiceWorkerContainer | undefined;
  if (serviceWorkerUrl === null || container === undefined) return;
  const registration = await container.register(workerAddress(serviceWorkerUrl), {
    updateViaCache: "none",
  });
  void container.ready.then(({ active }) => active?.postMessage("keep-later"));

  const offer = (): void => {
    // Without a controller this is the first visit: nothing older is open.
    const waiting = registration.waiting;
    if (waiting === null || container.controller === null) return;
    onUpdate(() => {
      container.addEventListener("controllerchange", () => void rest().then(() => location.reload()), { once: true });
      waiting.postMessage("skip-waiting");
    });
  };
  offer();
  registration.addEventListener("updatefound", () => {
    const fresh = registration.installing;
    fresh?.addEventListener("statechange", () => {
      if (fresh.state === "installed") offer();
    });
  });
}
