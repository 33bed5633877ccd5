// Measures the built page in Chromium, at full speed and with its processor
// slowed down, and prints rows of `{ what, slowed, figure, unit, calibration? }` as JSON.

import { feel } from "./bench-feel.mjs";
import { link } from "./bench-link.mjs";
import { papers } from "./bench-papers.mjs";
import { openFile, readings, supper } from "./bench-readings.mjs";
import { search } from "./bench-search.mjs";
import { calibrate, handle, share, toucher } from "./measure.mjs";
import { browser, phone, serve } from "./support.mjs";

/** How much slower than this machine: a mid-range phone, by common practice, no source. */
const SLOWED = 6;
const STARTS = 5;
const FRAMES = 300;
/** A frame later than this was seen as a jerk, ms. */
const LATE = 25;

/** Counts work per frame and the frames themselves, from outside the page's own code. */
function instrument() {
  const record = { work: [], frames: [], on: false };
  globalThis.frameRecord = record;
  const ask = globalThis.requestAnimationFrame.bind(globalThis);
  globalThis.requestAnimationFrame = (work) =>
    ask((time) => {
      const start = performance.now();
      work(time);
      if (record.on) record.work.push(performance.now() - start);
    });
  let last = 0;
  const tick = (time) => {
    if (record.on && last > 0) record.frames.push(time - last);
    last = time;
    ask(tick);
  };
  ask(tick);
}

async function openSlowed(chromium, url, slowed) {
  const context = await chromium.newContext({ ...phone, serviceWorkers: "block" });
  await context.addInitScript(instrument);
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: slowed });
  await page.goto(url);
  await page.waitForFunction(() => {
    const ready = document.documentElement.dataset.core === "ready";
    if (ready) globalThis.startedAt ??= performance.now();
    return ready;
  });
  return { context, page, session };
}

/** Time from the page's request to its being usable, each in a fresh context. */
async function starts(chromium, url, slowed) {
  const times = [];
  const units = [];
  for (let run = 0; run < STARTS; run += 1) {
    const { context, page } = await openSlowed(chromium, url, slowed);
    times.push(await page.evaluate(() => globalThis.startedAt));
    units.push(await page.evaluate(calibrate));
    await context.close();
  }
  return [
    { what: "request to ready, median", figure: share(times, 0.5), unit: "ms",
      calibration: share(units, 0.5) },
  ];
}

/** A drag over the first table. */
async function drag(chromium, url, slowed) {
  const { context, page, session } = await openSlowed(chromium, url, slowed);
  // Nothing moves before the first remedy has been taken.
  await page.locator(".first .solid").tap();
  await page.locator(".cured").waitFor();
  return dragged({ context, page, session }, "drag");
}

/** A drag over the demonstration table with all its hands and crops, the light drawn over it. */
async function fullDrag(chromium, url, slowed) {
  const { context, page, session } = await openSlowed(chromium, url, slowed);
  await page.locator(".first .solid").tap();
  await page.locator(".cured .solid").tap();
  await page.getByRole("button", { name: "Camera & light", exact: true }).tap();
  await page.getByRole("button", { name: "stops", exact: true }).tap();
  return dragged({ context, page, session }, "drag, everything on");
}

/** A drag over a table of 200 things. */
async function largeDrag(chromium, url, slowed) {
  const { context, page, session } = await openSlowed(chromium, url, slowed);
  await openFile(page, process.env.OVERSPREAD_LARGE_TABLE, 200);
  return dragged({ context, page, session }, "drag of 200 things");
}

/** Drags one thing in a circle for 300 frames. */
async function dragged({ context, page, session }, name) {
  await page.waitForTimeout(1000);
  const touch = toucher(session);
  const calibration = await page.evaluate(calibrate);
  const { x, y } = await handle(page, touch);
  await page.evaluate(() => (globalThis.frameRecord.on = true));
  // In bursts, as asking the page how far it is costs it time too.
  for (let step = 0, frames = 0; frames < FRAMES; ) {
    for (let burst = 0; burst < 50; burst += 1, step += 1) {
      const turn = step / 12;
      await touch("touchMove", x + 30 * Math.sin(turn), y + 30 * (1 - Math.cos(turn)));
    }
    frames = await page.evaluate(() => globalThis.frameRecord.frames.length);
  }
  const record = await page.evaluate(() => globalThis.frameRecord);
  await touch("touchEnd");
  await context.close();
  const late = record.frames.filter((time) => time > LATE).length;
  return [
    { what: `${name}, work per frame, p95`, figure: share(record.work, 0.95), unit: "ms", calibration },
    { what: `${name}, frame, median`, figure: share(record.frames, 0.5), unit: "ms" },
    { what: `${name}, frames over ${LATE} ms`, figure: (100 * late) / record.frames.length, unit: "%" },
  ];
}

const site = await serve();
const chromium = await browser();
try {
  const rows = [];
  for (const slowed of [1, SLOWED]) {
    for (const measure of [starts, drag, fullDrag, largeDrag, readings, supper, search, papers]) {
      const found = await measure(chromium, site.url, slowed);
      rows.push(...found.map((row) => ({ ...row, slowed })));
    }
  }
  // Web vitals are told at this throttle.
  rows.push(...(await feel(site.url, 4)).map((row) => ({ ...row, slowed: 4 })));
  // Under throttles of its own.
  rows.push(...(await link(chromium)));
  console.log(JSON.stringify(rows));
} finally {
  await chromium.close();
  site.stop();
}
