// Measures what the worker does while the table of sixty dishes, or the
// demonstration table with its four crops, is dragged and after each edit, and how long the page takes to show it, from outside both.

import { calibrate, handle, share, toucher } from "./measure.mjs";
import { renderers, slow } from "./slow.mjs";
import { phone } from "./support.mjs";

/** How many answers in a drag, and how many edits, are measured. */
const ANSWERS = 120;
const EDITS = 15;

/**
 * Within the worker, before its own code: times of its live steps, of its
 * settled steps (from an edit to the readings of it) and of their slices.
 */
function watchWorker() {
  const record = { live: [], settled: [], slices: [] };
  globalThis.workRecord = record;
  let edited;
  let told = false;
  const timed = (work) => {
    const start = performance.now();
    work();
    const end = performance.now();
    if (edited === undefined) return end - start;
    record.slices.push(end - start);
    if (told) {
      record.settled.push(end - edited);
      edited = undefined;
    }
    return end - start;
  };
  const listen = globalThis.addEventListener.bind(globalThis);
  globalThis.addEventListener = (type, hear) =>
    listen(type, (event) => {
      const { ask } = event.data;
      if (ask === "edit") [edited, told] = [performance.now(), false];
      const took = timed(() => hear(event));
      if (ask === "drag") record.live.push(took);
    });
  const later = globalThis.setTimeout.bind(globalThis);
  globalThis.setTimeout = (work, after) => later(() => timed(work), after);
  const post = globalThis.postMessage.bind(globalThis);
  globalThis.postMessage = (answer) => {
    told ||= answer.tell === "read";
    post(answer);
  };
}

/** Within the page: from when a finger moved until a frame shows what that changes. */
function watchPage() {
  const record = { shown: [], changes: 0 };
  globalThis.shownRecord = record;
  let moved = 0;
  let inFrame = 0;
  addEventListener("pointermove", (event) => (moved = event.timeStamp), { capture: true });
  // The page follows the newest place once a frame, before it asks its worker.
  const ask = globalThis.requestAnimationFrame.bind(globalThis);
  globalThis.requestAnimationFrame = (work) =>
    ask((time) => {
      inFrame = moved;
      work(time);
    });
  const times = new Map();
  const known = new WeakSet();
  const post = Worker.prototype.postMessage;
  const drawn = new MessageChannel();
  const waiting = [];
  drawn.port1.onmessage = () => record.shown.push(performance.now() - waiting.shift());
  Worker.prototype.postMessage = function postMessage(asked, ...rest) {
    if (asked.ask === "drag") times.set(asked.serial, inFrame);
    if (!known.has(this)) {
      known.add(this);
      this.addEventListener("message", ({ data }) => {
        if (data.tell !== "live") return;
        record.changes += data.live.changes.length;
        // A frame that has been through its callbacks is being drawn.
        ask(() => {
          waiting.push(times.get(data.serial));
          drawn.port2.postMessage(0);
        });
      });
    }
    return post.call(this, asked, ...rest);
  };
}

/** Opens a file of the planner, with this many things, in the page, at work. */
export async function openFile(page, file, things) {
  if (file === undefined) throw new Error("no file to open: run `cargo xtask bench`");
  await page.locator(".first .solid").tap();
  await page.getByRole("button", { name: "Table", exact: true }).tap();
  await page.getByRole("button", { name: "Papers" }).tap();
  await page.getByLabel("Open a file").setInputFiles(file);
  await page.locator(`.picture [data-key=item-${things}]`).waitFor();
  await page.getByRole("button", { name: "Table", exact: true }).tap();
  await page.waitForTimeout(1000);
}

/** The demonstration table, at work. */
async function openSupper(page) {
  await page.locator(".first .solid").tap();
  await page.getByRole("button", { name: "Table", exact: true }).tap();
  await page.locator(".late").waitFor({ state: "detached" });
  await page.waitForTimeout(1000);
}

/** Live and settled steps, every thread of the page slowed down. */
export const readings = (chromium, url, slowed) =>
  read({ chromium, url, slowed }, "60", (page) => openFile(page, process.env.OVERSPREAD_TABLE, 60));

/** The same of the demonstration table. */
export const supper = (chromium, url, slowed) =>
  // A main dish, so that the drag has something to say.
  read({ chromium, url, slowed }, "supper", openSupper, ".picture [data-key=item-2]");

async function read({ chromium, url, slowed }, name, open, first) {
  const context = await chromium.newContext({ ...phone, serviceWorkers: "block" });
  await context.addInitScript(watchPage);
  await context.route(/worker-[0-9a-f]+\.js$/, async (route) => {
    const response = await route.fetch();
    const body = `(${watchWorker})();\n${await response.text()}`;
    await route.fulfill({ response, body });
  });
  const page = await context.newPage();
  await page.goto(url);
  await page.waitForSelector("html[data-core=ready]");
  await open(page);
  const [worker] = page.workers();
  const touch = toucher(await context.newCDPSession(page));
  const { x, y } = await handle(page, touch, first);
  const measure = () => worker.evaluate(calibrate);
  const { unit: unitBefore, goOn } = await slow(await renderers(chromium), slowed, measure);
  const rows = [];
  try {
    const told = () => worker.evaluate(() => globalThis.workRecord);
    await worker.evaluate(() => {
      for (const list of Object.values(globalThis.workRecord)) list.length = 0;
    });
    await page.evaluate(() => (globalThis.shownRecord.shown.length = 0));
    for (let step = 0, answers = 0; answers < ANSWERS; ) {
      for (let burst = 0; burst < 25; burst += 1, step += 1) {
        const turn = step / 12;
        await touch("touchMove", x + 30 * Math.sin(turn), y + 30 * (1 - Math.cos(turn)));
      }
      answers = (await told()).live.length;
    }
    const { live } = await told();
    const { shown, changes } = await page.evaluate(() => globalThis.shownRecord);
    if (changes === 0) throw new Error("the drag changed no finding");
    await touch("touchEnd");

    await page.locator(".picture").focus();
    for (let edit = 0; edit < EDITS; edit += 1) {
      const before = (await told()).settled.length;
      await page.keyboard.press(edit % 2 === 0 ? "ArrowRight" : "ArrowLeft");
      while ((await told()).settled.length === before) await page.waitForTimeout(50);
    }
    const { settled, slices } = await told();
    // Other programs come and go while it is measured.
    const unit = (unitBefore + (await measure())) / 2;
    const row = (what, figure) => rows.push({ what, figure, unit: "ms", calibration: unit });
    row(`readings/${name}, fixed sum`, unit);
    row(`live step/${name} in the worker, median`, share(live, 0.5));
    row(`live step/${name} in the worker, p95`, share(live, 0.95));
    row(`finger moved to marks shown/${name}, median`, share(shown, 0.5));
    row(`finger moved to marks shown/${name}, p95`, share(shown, 0.95));
    row(`settled/${name} in the worker, median`, share(settled, 0.5));
    row(`settled/${name} in the worker, p95`, share(settled, 0.95));
    row(`settled/${name}, slice, p95`, share(slices, 0.95));
    row(`settled/${name}, longest slice`, Math.max(...slices));
  } finally {
    await goOn();
    await context.close();
  }
  return rows;
}
