// What a hand does without meaning to: a finger that trembles, one too many, a
// drag the phone takes away, keys meant for a field, a wheel, a tap too much.
// None of it is a step: what is kept is the same to the byte.

import assert from "node:assert/strict";
import { test } from "node:test";

import { begin, choose, file, go, kept, steps } from "./layouts.mjs";
import { long, setUp } from "./setup.mjs";
import { assertClean, desk, painted, phone } from "./support.mjs";

const { guarded, started } = setUp();
const still = { ...phone, reducedMotion: "reduce" };

/** How many steps are kept. */
const count = async (page) => JSON.parse(await kept(page)).journal.length;

/** All that an act would change. */
async function now(page) {
  await painted(page);
  const shown = await page.evaluate(() => ({
    drawn: [...document.querySelectorAll(".picture [data-key]")].map((each) => [each.dataset.key, each.getAttribute("transform")]),
    undo: [...document.querySelectorAll(".row button")].map((button) => button.disabled),
    last: document.querySelector(".row .quiet").textContent,
    alerts: document.querySelectorAll("[role=alert]").length,
  }));
  return { ...shown, kept: await kept(page) };
}

/** The middle of something on the picture, px; in one go, as it may be drawn anew at any time. */
const middle = (page, of) =>
  page.evaluate((selector) => {
    const { x, y, width, height } = document.querySelector(selector).getBoundingClientRect();
    if (width === 0) throw new Error(`${selector} is not shown`);
    return [x + width / 2, y + height / 2];
  }, of);

/** Fingers on the glass: `at` says when, s, where that matters. */
async function glass(context, page) {
  const session = await context.newCDPSession(page);
  return (type, points = [], at = undefined) =>
    session.send("Input.dispatchTouchEvent", {
      type,
      touchPoints: points.map(([x, y], id) => ({ x, y, id })),
      ...(at === undefined ? {} : { timestamp: at }),
    });
}

/** A finger goes down and by `dx`, `dy` in small steps, and stays there. */
async function stroke(touch, [x, y], dx, dy) {
  await touch("touchStart", [[x, y]]);
  for (let n = 1; n <= 6; n += 1) await touch("touchMove", [[x + (dx * n) / 6, y + (dy * n) / 6]]);
  return [x + dx, y + dy];
}
/** The same on what follows it. */
async function drag(page, touch, of) {
  const at = await stroke(touch, await middle(page, of), 30, 24);
  await page.locator(".picture .moving[data-lifted][transform]").waitFor({ state: "attached" });
  return at;
}

/** Never further than 5 px. */
const TREMOR = [[2, 1], [-3, 4], [0, -5], [5, 0]];
async function click(page, [x, y]) {
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (const [dx, dy] of TREMOR) await page.mouse.move(x + dx, y + dy);
  await page.mouse.up();
}

/** The loaf chosen in the whole picture, whatever was chosen and enlarged before. */
async function rest(page) {
  await page.keyboard.press("Escape");
  await choose(page);
  await page.keyboard.press("0");
  await page.evaluate(() => scrollTo(0, 0));
  await painted(page);
}

const LOAF = ".picture [data-key=item-3]";
const KNOB = ".picture .handle";

/** Slips of a finger on the glass, by what they are. */
const SLIPS = {
  async "a tap that trembles on a thing"(page, touch) {
    const [x, y] = await middle(page, LOAF);
    await touch("touchStart", [[x, y]]);
    for (const [dx, dy] of TREMOR) await touch("touchMove", [[x + dx, y + dy]]);
    await touch("touchEnd");
  },
  // Of a finger the browser itself may leave out the first stretch; of a mouse or a pen it does not.
  async "a click that trembles on a thing"(page) {
    await click(page, await middle(page, LOAF));
  },
  async "a click that trembles on the handle"(page) {
    await click(page, await middle(page, KNOB));
  },
  async "a pinch begun with one finger on a thing"(page, touch) {
    const [x, y] = await middle(page, LOAF);
    await touch("touchStart", [[x, y]]);
    await touch("touchStart", [[x, y], [x + 60, y]]);
    for (let n = 1; n <= 5; n += 1) await touch("touchMove", [[x - 4 * n, y], [x + 60 + 4 * n, y + n]]);
    await touch("touchEnd", [[x - 20, y]]);
    await touch("touchMove", [[x - 40, y + 30]]);
    await touch("touchEnd");
  },
  async "a second finger in mid-drag"(page, touch) {
    const [x, y] = await drag(page, touch, LOAF);
    await touch("touchStart", [[x, y], [x - 90, y]]);
    await touch("touchMove", [[x + 20, y], [x - 110, y]]);
    await touch("touchEnd", [[x + 20, y]]);
    await touch("touchMove", [[x + 60, y + 20]]);
    await touch("touchEnd");
  },
  async "a second finger in mid-turn"(page, touch) {
    const [x, y] = await drag(page, touch, KNOB);
    await touch("touchStart", [[x, y], [x - 90, y]]);
    await touch("touchEnd", [[x, y]]);
    await touch("touchEnd");
  },
  async "a drag the phone takes away"(page, touch) {
    await drag(page, touch, LOAF);
    await touch("touchCancel");
  },
  async "a turn the phone takes away"(page, touch) {
    await drag(page, touch, KNOB);
    await touch("touchCancel");
  },
  async "a drag ended by Escape"(page, touch) {
    const [x, y] = await drag(page, touch, LOAF);
    await page.keyboard.press("Escape");
    await touch("touchMove", [[x + 30, y]]);
    await touch("touchEnd");
  },
  async "a swipe over the bare board"(page, touch) {
    const { x, y } = await page.locator(".picture").boundingBox();
    await stroke(touch, [x + 6, y + 6], 20, 160);
    await touch("touchEnd");
  },
  async "a swipe begun below the picture and ended on a thing"(page, touch) {
    const [x, y] = await middle(page, LOAF);
    const { height } = page.viewportSize();
    await stroke(touch, [x, height - 120], 0, y - height + 120);
    await touch("touchEnd");
  },
  async "two taps on a thing"(page, touch) {
    const at = await middle(page, LOAF);
    const begun = Date.now() / 1000;
    for (const n of [0, 0.16]) {
      await touch("touchStart", [at], begun + n);
      await touch("touchEnd", [], begun + n + 0.04);
    }
  },
};

/** Those tried where there is no time for all. */
const FEW = [
  "a click that trembles on the handle", "a second finger in mid-drag",
];

test("slips of a finger on the picture are no steps", async () => {
  const { context, faults } = await guarded(still);
  const page = await begin(await started(context));
  const touch = await glass(context, page);
  await choose(page);
  const before = long ? await file(page) : "";
  await go(page, "Table");
  const was = await now(page);
  for (const [name, slip] of Object.entries(SLIPS).filter(([name]) => long || FEW.includes(name))) {
    await rest(page);
    await slip(page, touch);
    assert.deepEqual(await now(page), was, name);
  }
  if (long) assert.ok((await file(page)) === before, "the layout is the same to the byte");

  // The same finger, meaning it.
  await rest(page);
  for (const of of [LOAF, KNOB]) {
    const steps = await count(page);
    await drag(page, touch, of);
    await touch("touchEnd");
    await painted(page);
    assert.equal(await count(page), steps + 1, `a whole drag of ${of} is one step`);
  }
  assertClean(faults);
  await context.close();
});

test("keys meant for a field or the browser, and a wheel, are no steps", { skip: !long }, async () => {
  const { context, faults } = await guarded({ ...desk, reducedMotion: "reduce" });
  const page = await begin(await started(context));
  await choose(page);
  const was = await now(page);
  // The thing that is chosen stays so while something is looked for.
  await page.getByRole("button", { name: "Add a thing" }).click();
  const field = page.getByLabel("Trade name or size");
  await field.fill("loaf");
  const keys = ["Home", "Delete", "[", "]", "ArrowLeft", "ArrowRight", "ArrowDown", "Backspace", "+", "0", "Control+z", "Control+y"];
  for (const key of keys) await field.press(key);
  assert.deepEqual(await now(page), was, "in a search");
  await page.getByRole("button", { name: "Done adding" }).click();
  const name = page.getByRole("textbox", { name: "Name", exact: true });
  await page.locator(".chosen-strip + details > summary").click();
  await name.focus();
  for (const key of keys) await name.press(key);
  await name.fill("loaf");
  await name.blur();
  assert.deepEqual(await now(page), was, "in the name of what is chosen, which is again as it was");

  const picture = page.locator(".picture");
  await picture.focus();
  // What takes a page back or ahead, or closes it, on one system or another.
  const elsewhere = ["Alt+ArrowDown", "Alt+Delete", "Meta+ArrowLeft", "Meta+[", "Control+[", "Control+Backspace", "Control+ArrowUp"];
  for (const key of elsewhere) await picture.press(key);
  assert.deepEqual(await now(page), was, "on the picture, with a key held");
  const seen = () => page.locator(".picture > svg").first().getAttribute("viewBox");
  const before = await seen();
  await page.mouse.move(...(await middle(page, LOAF)));
  for (const turn of [120, -240, 60]) await page.mouse.wheel(0, turn);
  await page.waitForFunction((was) => document.querySelector(".picture > svg").getAttribute("viewBox") !== was, before);
  assert.deepEqual(await now(page), was, "a wheel over what is chosen");
  await picture.press("[");
  assert.notDeepEqual(await now(page), was, "a key meant for it turns it");
  assertClean(faults);
  await context.close();
});

test("a tap too many counts once for what is proposed, and each tap for what is counted", async () => {
  const { context, faults } = await guarded(still);
  const page = await started(context);
  const touch = await glass(context, page);
  /** Two taps, the second when what the first led to is there. */
  const twice = async (of, come) => {
    await page.locator(of).first().scrollIntoViewIfNeeded();
    await painted(page);
    const [at, begun] = [await middle(page, of), Date.now() / 1000];
    // However busy this machine is, both are within the same moment.
    await page.evaluate(() => {
      const real = setTimeout;
      const held = [];
      globalThis.setTimeout = (run, ms, ...given) => (ms >= 300 ? held.push(run) : real(run, ms, ...given));
      globalThis.goOn = () => {
        globalThis.setTimeout = real;
        for (const run of held) run();
      };
    });
    await touch("touchStart", [at], begun);
    await touch("touchEnd", [], begun + 0.05);
    await come();
    await touch("touchStart", [at], begun + 0.2);
    await touch("touchEnd", [], begun + 0.25);
    await painted(page);
    await page.evaluate(() => globalThis.goOn());
  };
  await twice(".first .solid", () => page.locator(".cured .find .tape").waitFor());
  assert.equal(await page.locator(".cured").count(), 1, "nothing else was pressed");
  assert.equal(await count(page), 1, "cured once");
  await go(page, "Table");
  await page.locator(".find .tape").first().waitFor();
  const act = await page.locator(".find .tape span").first().innerText();
  await twice(".find .tape", () =>
    page.waitForFunction((was) => document.querySelector(".find .tape span")?.textContent !== was, act));
  assert.equal(await count(page), 2, "one remedy");
  assert.equal(await page.getByRole("alert").count(), 0, "and no word of a second");

  await page.getByRole("button", { name: "Add a thing" }).click();
  await page.getByLabel("Trade name or size").fill("coupe");
  await page.locator(".finds button:not(.star)").first().waitFor();
  await twice(".finds button:not(.star)", () => painted(page));
  assert.equal(await count(page), 4, "two dishes");
  assertClean(faults);
  await context.close();
});
