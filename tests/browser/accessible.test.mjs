// Every screen there is, by day and in the dark: seen by axe-core, touched by a
// finger, heard, and looked at by who sees no hues; enlarged to four times, until
// little room is left; with its words set wide; and with nothing that moves by
// itself where that is not wished for. All that is amiss is told at the end.

import assert from "node:assert/strict";
import { test } from "node:test";

import { cramped, hueAlone, ringless, unspoken } from "./judges.mjs";
import { amiss } from "./laid.mjs";
import { long, setUp } from "./setup.mjs";
import { accessibility, assertClean, desk, phone } from "./support.mjs";
import { everything, walker } from "./walk.mjs";

const { guarded, started } = setUp();

/** 1280 by 1024 px at 400%. */
const enlarged = { viewport: { width: 320, height: 256 }, deviceScaleFactor: 4 };
const narrow = { ...phone, viewport: { width: 320, height: 640 } };

/** Nothing moves by itself. */
async function moving(page) {
  const names = await page.evaluate(() => document.getAnimations().map(({ animationName }) => animationName ?? "script"));
  // A word that comes late stands still once it is there.
  return names.filter((name) => name !== "late").map((name) => `${name} moves`);
}

/** Nothing is read by scrolling two ways, and what stands fast leaves room for half. */
async function crowded(page) {
  const [across, fast] = await page.evaluate(() => {
    const root = document.querySelector("dialog[open]") ?? document.body;
    const stuck = [...root.querySelectorAll("*")].filter(
      (each) => each.checkVisibility() && ["sticky", "fixed"].includes(getComputedStyle(each).position));
    const high = stuck.map((each) => each.getBoundingClientRect().height);
    return [document.documentElement.scrollWidth, high.reduce((sum, each) => sum + each, 0) / innerHeight];
  });
  const faults = across <= 320 ? [] : [`scrolls sideways: ${across}`];
  return fast <= 0.5 ? faults : [...faults, `${fast} of the screen stands fast`];
}

/** Nothing is found amiss, and its headings are in order. */
const sound = (page) => accessibility(page, { also: ["best-practice"] });
const roomy = (page) => page.evaluate(amiss, [[], "", true]);

/** Words set as wide as WCAG 1.4.12 asks a page to bear. Runs in the page, before anything of it. */
function spaced() {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(`:not(svg, svg *) {
    line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important;
  }
  p { margin-bottom: 2em !important; }`);
  document.adoptedStyleSheets = [sheet];
}

const short = [sound, moving, cramped, hueAlone];
const all = [...short, unspoken, ringless];

/**
 * Goes somewhere on a kind of screen, asks these judges of every screen passed,
 * and fails at the end with all they found.
 */
async function past(options, judges, way = everything, first = undefined) {
  const { context, faults } = await guarded({ ...options, reducedMotion: "reduce" });
  if (first !== undefined) await context.addInitScript(first);
  const found = [];
  const looks = (page) => async (screen) => {
    for (const judge of judges) {
      for (const fault of await judge(page)) found.push(`${screen}: ${fault}`);
    }
  };
  try {
    await way(await started(context), looks);
  } catch (error) {
    found.push(`the way ends: ${error.message}`);
  }
  await context.close();
  assert.deepEqual(found, [], "amiss");
  assertClean(faults);
}

const screens = [
  ["phone", phone],
  ["phone in the dark", { ...phone, colorScheme: "dark" }],
  ["desk", desk],
  ["desk in the dark", { ...desk, colorScheme: "dark" }],
  ["phone in colours of the system", { ...phone, forcedColors: "active", colorScheme: "dark" }],
  ["desk in pale colours of the system", { ...desk, forcedColors: "active" }],
];
for (const [name, options] of long ? screens : []) {
  test(`every screen on a ${name}`, () => past(options, all));
}
if (long) {
  test("every screen at four times its size", () => past(enlarged, [crowded]));
  test("every screen with its words set wide", () => past(narrow, [roomy], everything, spaced));
}

test("the first visit, the guide, a new table and the day in the dark", () =>
  past({ ...phone, colorScheme: "dark" }, short, async (page, looks) => {
    const walk = walker(page, looks(page));
    await walk.begun();
    await walk.go("Papers");
    await walk.day();
    await walk.anew();
  }));
