// A slower processor for a whole renderer. The browser's own throttle slows a
// page's main thread alone and is refused for workers ("only supported for
// pages, not workers"), so here the process is stopped and let go on in turn,
// with every thread of it.

import { setTimeout as pause } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { isMainThread, Worker, workerData } from "node:worker_threads";

/** How long it runs at a time, ms: far below what a frame takes. */
const RUNS = 1;
/** How near to the wished slowness is near enough, and how often it is tried for. */
const NEAR = 0.08;
const TRIES = 8;

/**
 * Slows processes down until `measure`, which times a fixed sum in one of
 * them, says `times` as much. Returns what it said at last, and what lets them
 * go on.
 */
export async function slow(pids, times, measure) {
  const free = await measure();
  if (times <= 1) return { unit: free, goOn: async () => {} };
  const stopped = new Float64Array(new SharedArrayBuffer(8));
  const flag = new Int32Array(new SharedArrayBuffer(4));
  stopped[0] = RUNS * (times - 1);
  const worker = new Worker(fileURLToPath(import.meta.url), {
    workerData: { pids, stopped, flag },
  });
  const ended = new Promise((resolve, reject) => {
    worker.once("exit", resolve);
    worker.once("error", reject);
  });
  const goOn = () => {
    Atomics.store(flag, 0, 1);
    Atomics.notify(flag, 0);
    return ended;
  };
  await new Promise((resolve) => worker.once("online", resolve));
  for (let tried = 0; tried < TRIES; tried += 1) {
    await pause(200);
    const unit = await measure();
    const off = unit / free / times;
    if (Math.abs(off - 1) < NEAR) return { unit, goOn };
    // Stopping and going on take time of their own, and so do other programs.
    stopped[0] = Math.max(RUNS, (stopped[0] + RUNS) / off - RUNS);
  }
  await goOn();
  throw new Error(`the fixed sum would not take ${times} times as long`);
}

/** The processes of a kind, by what the browser says of itself. */
export async function processes(chromium, kind) {
  const session = await chromium.newBrowserCDPSession();
  const { processInfo } = await session.send("SystemInfo.getProcessInfo");
  await session.detach();
  return processInfo.filter(({ type }) => type === kind).map(({ id }) => id);
}
/** Those that draw pages. */
export const renderers = (chromium) => processes(chromium, "renderer");

function run({ pids, stopped, flag }) {
  const running = new Set(pids);
  const all = (signal) => {
    for (const pid of running) {
      try {
        process.kill(pid, signal);
      } catch (error) {
        // A spare process may end at any time.
        if (error.code !== "ESRCH") throw error;
        running.delete(pid);
      }
    }
  };
  try {
    while (Atomics.load(flag, 0) === 0) {
      Atomics.wait(flag, 0, 0, RUNS);
      all("SIGSTOP");
      Atomics.wait(flag, 0, 0, stopped[0]);
      all("SIGCONT");
    }
  } finally {
    all("SIGCONT");
  }
}

if (!isMainThread && workerData?.flag !== undefined) run(workerData);
