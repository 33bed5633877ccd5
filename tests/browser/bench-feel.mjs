// Measures how long the page takes to answer a touch or a key: from the event to
// the next frame, as the browser's Event Timing tells it, over everything a
// person does with the demonstration table, with all its hands, exposures, crops
// and light on. And how far anything moves on the page that nobody moved.

import { calibrate, handle, share, toucher } from "./measure.mjs";
import { screen } from "./screen.mjs";
import { browser, phone } from "./support.mjs";

/** Notes each event's time to the next frame, and every shift of layout. */
function instrument() {
  const feel = (globalThis.feel = { events: [], shifts: [] });
  new PerformanceObserver((list) => {
    for (const { name, duration, interactionId, processingStart, processingEnd } of list.getEntries()) {
      if (interactionId > 0) feel.events.push({ name, duration, work: processingEnd - processingStart });
    }
  }).observe({ type: "event", durationThreshold: 16, buffered: true });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) {
      // What follows a touch within half a second was asked for.
      if (!entry.hadRecentInput) {
        feel.shifts.push({
          value: entry.value,
          what: entry.sources.map(({ node }) => node?.className || node?.nodeName).join(" "),
        });
      }
    }
  }).observe({ type: "layout-shift", buffered: true });
}

/**
 * Taps what a locator finds by its place alone: `tap` of the locator asks the
 * page what lies under the finger while the page answers, which takes its time.
 */
async function tap(page, what) {
  await what.scrollIntoViewIfNeeded();
  const { x, y, width, height } = await what.boundingBox();
  await page.evaluate(() => (globalThis.feel.events.length = 0));
  await page.touchscreen.tap(x + width / 2, y + height / 2);
}

/** Everything a person does, by name; each leaves the table as the next wants it. */
function deeds(page, touch) {
  const button = (name) => {
    const found = page.getByRole("button", { name, exact: true });
    return { tap: () => tap(page, found) };
  };
  const picture = page.locator(".picture");
  const place = (name) => button(name).tap();
  const list = page.getByRole("region", { name: "Things on the table" });
  return [
    ["lay the runner", () => tap(page, page.locator(".first .solid"))],
    ["to Camera & light", () => place("Camera & light")],
    ["show stops", () => button("stops").tap()],
    ["show glare", () => button("glare").tap()],
    ["to Crops", () => place("Crops")],
    ["to Hands", () => place("Hands")],
    ["to Papers", () => place("Papers")],
    ["to Table", () => place("Table")],
    ["choose a thing in the list", () => tap(page, list.getByRole("button", { name: "mussel pot" }).first())],
    ["choose it in the picture", async () => {
      const tag = await page.locator("[data-key=tags] circle").first().boundingBox();
      await page.touchscreen.tap(tag.x + tag.width, tag.y - 6);
    }],
    ["nudge by key", () => picture.press("ArrowRight")],
    ["nudge again", () => picture.press("ArrowDown")],
    ["turn by key", () => picture.press("]")],
    ["undo", () => button("Undo").tap()],
    ["redo", () => button("Redo").tap()],
    ["undo by key", () => page.keyboard.press("Control+z")],
    ["enlarge by key", () => picture.press("+")],
    ["fit by key", () => picture.press("0")],
    ["drag and let go", async () => {
      const { x, y } = await handle(page, touch);
      for (let step = 1; step <= 20; step += 1) await touch("touchMove", x + step, y - step);
      await touch("touchEnd");
    }],
    ["undo the drag", () => button("Undo").tap()],
    ["open a finding", () => tap(page, page.locator(".find > button").first())],
    ["close it", () => tap(page, page.locator(".find > button").first())],
    ["take a remedy", () => tap(page, page.locator(".find .tape").first())],
    ["undo the remedy", () => button("Undo").tap()],
    ["add: open", () => button("Add a thing").tap()],
    ["add: write a letter", () => page.locator("input[type=search]").first().press("b")],
    ["add: write another", () => page.locator("input[type=search]").first().press("o")],
    ["add: take the first found", () => tap(page, page.locator(".finds button").first())],
    ["add: done", () => button("Done adding").tap()],
    ["take away by key", () => picture.press("Delete")],
    ["undo that", () => button("Undo").tap()],
    ["through the lens", () => button("through the lens").tap()],
    ["from above", () => button("from above").tap()],
    ["to Hands again", () => place("Hands")],
    ["no hands", () => button("no hands").tap()],
    ["all together", () => button("all together").tap()],
    ["to Papers again", () => place("Papers")],
    ["the link", () => button("Make the link").tap()],
  ];
}

/** How often everything is done: single times are a matter of luck. */
const RUNS = 3;

/**
 * How the page answers: of each deed the longest time to the next frame, in the
 * middle of three runs, on a screen in memory: without any, Chromium shows no
 * frame and tells of one only when the page next rests, so that what is done
 * after it counts as well.
 */
export async function feel(url, slowed) {
  const { display, stop } = await screen();
  try {
    const runs = [];
    for (let run = 0; run < RUNS; run += 1) {
      const chromium = await browser({ headless: false, env: { ...process.env, DISPLAY: display } });
      runs.push(await measured(chromium, url, slowed).finally(() => chromium.close()));
    }
    return told(runs);
  } finally {
    await stop();
  }
}

function told(runs) {
  const middle = (of) => share(runs.map(of), 0.5);
  const calibration = middle((run) => run.calibration);
  const row = (what, figure) => ({ what: `feel/${what}`, figure, unit: "ms", calibration });
  const deeds = runs[0].deeds.map(([name], at) => [name, middle((run) => run.deeds[at][1])]);
  const all = deeds.map(([, time]) => time);
  const singles = runs.flatMap((run) => run.deeds.map(([, time]) => time));
  return [
    ...deeds.map(([name, time]) => row(name, time)),
    row("worst of all", Math.max(...all)),
    row("p98 of all", share(all, 0.98)),
    row("worst single time", Math.max(...singles)),
    { what: "feel/layout shift", figure: Math.max(...runs.map((run) => run.shift)), unit: "" },
  ];
}

async function measured(chromium, url, slowed) {
  const context = await chromium.newContext(phone);
  await context.addInitScript(instrument);
  const page = await context.newPage();
  page.setDefaultTimeout(20_000);
  const session = await context.newCDPSession(page);
  await page.goto(url);
  await page.waitForSelector("html[data-core=ready]");
  await page.waitForTimeout(1_000);
  await session.send("Emulation.setCPUThrottlingRate", { rate: slowed });
  const calibration = await page.evaluate(calibrate);
  const times = [];
  for (const [name, run] of deeds(page, toucher(session))) {
    const before = await page.evaluate(() => {
      globalThis.feel.events.length = 0;
      return performance.interactionCount;
    });
    await run();
    // Until what follows it has been read and drawn: the next is not to wait for it.
    await page.waitForTimeout(900);
    const [events, count] = await page.evaluate(() => [globalThis.feel.events, performance.interactionCount]);
    // Otherwise what was never done would count as done at once.
    if (count === before) throw new Error(`"${name}" touched nothing`);
    times.push([name, Math.max(0, ...events.map(({ duration }) => duration))]);
  }
  const shifts = await page.evaluate(() => globalThis.feel.shifts);
  await context.close();
  if (process.env.OVERSPREAD_SHIFTS) console.error(JSON.stringify(shifts));
  return { calibration, deeds: times, shift: shifts.reduce((sum, { value }) => sum + value, 0) };
}
