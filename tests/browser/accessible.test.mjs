// Every screen there is, seen by axe-core by day and in the dark; enlarged to
// four times, until little room is left; and with nothing that moves by itself
// where that is not wished for.

import assert from "node:assert/strict";
import { test } from "node:test";

import { long, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, desk, phone } from "./support.mjs";
import { everything, walker } from "./walk.mjs";

const { guarded, started } = setUp();

/** 1280 by 1024 px at 400%. */
const enlarged = { viewport: { width: 320, height: 256 }, deviceScaleFactor: 4 };

/** Nothing is found amiss, its headings are in order, and nothing moves by itself. */
const sound = (page) => async (screen) => {
  await assertAccessible(page, { also: ["best-practice"] });
  const moving = await page.evaluate(() => document.getAnimations().map(({ animationName }) => animationName ?? "script"));
  // A word that comes late stands still once it is there.
  assert.deepEqual(moving.filter((name) => name !== "late"), [], `${screen} moves`);
};

/** Nothing is read by scrolling two ways, and what stands fast leaves room for half. */
const roomy = (page) => async (screen) => {
  const [across, fast] = await page.evaluate(() => {
    const root = document.querySelector("dialog[open]") ?? document.body;
    const stuck = [...root.querySelectorAll("*")].filter(
      (each) => each.checkVisibility() && ["sticky", "fixed"].includes(getComputedStyle(each).position));
    const high = stuck.map((each) => each.getBoundingClientRect().height);
    return [document.documentElement.scrollWidth, high.reduce((sum, each) => sum + each, 0) / innerHeight];
  });
  assert.ok(across <= 320, `${screen} scrolls sideways: ${across}`);
  assert.ok(fast <= 0.5, `${screen}: ${fast} of the screen stands fast`);
};

/** Sees to every screen of a kind. */
async function past(options, looks) {
  const { context, faults } = await guarded({ ...options, reducedMotion: "reduce" });
  await everything(await started(context), looks);
  assertClean(faults);
  await context.close();
}

const screens = [
  ["phone", phone],
  ["phone in the dark", { ...phone, colorScheme: "dark" }],
  ["desk", desk],
  ["desk in the dark", { ...desk, colorScheme: "dark" }],
  ["phone in colours of the system", { ...phone, forcedColors: "active", colorScheme: "dark" }],
];
for (const [name, options] of long ? screens : []) {
  test(`every screen on a ${name}`, () => past(options, sound));
}
if (long) test("every screen at four times its size", () => past(enlarged, roomy));

test("the first visit, the guide, a new table and the day in the dark", async () => {
  const { context, faults } = await guarded({ ...phone, colorScheme: "dark", reducedMotion: "reduce" });
  const page = await started(context);
  const walk = walker(page, sound(page));
  await walk.begun();
  await walk.go("Papers");
  await walk.day();
  await walk.anew();
  assertClean(faults);
  await context.close();
});
