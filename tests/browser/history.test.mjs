// What can be taken back and made again, also after the page was closed.

import assert from "node:assert/strict";
import { test } from "node:test";

import { begin, choose, loaf, saved, steps } from "./layouts.mjs";
import { ready, setUp } from "./setup.mjs";
import { assertClean } from "./support.mjs";

const { guarded, started } = setUp();

async function again(page) {
  await saved(page);
  await page.reload();
  await ready(page);
}

async function nudge(page, key, times = 1) {
  await page.locator(".picture").focus();
  for (let n = 0; n < times; n += 1) await page.keyboard.press(key);
}

test("undo and redo stand where they stood before a reload", async () => {
  const { context, faults } = await guarded();
  const page = await begin(await started(context));
  const [undo, redo] = ["Undo", "Redo"].map((name) => page.getByRole("button", { name, exact: true }));
  await choose(page);
  const keys = async (key, times) => {
    for (let n = 0; n < times; n += 1) await page.keyboard.press(key);
  };
  await page.evaluate(steps);
  const places = [await loaf(page)];
  // More than one snapshot's worth of steps.
  for (let n = 0; n < 30; n += 1) {
    await nudge(page, n % 2 === 0 ? "ArrowRight" : "ArrowDown");
    places.push(await loaf(page));
  }
  assert.equal(new Set(places).size, places.length, "every nudge moved it");
  await keys("Control+z", 12);
  assert.equal(await loaf(page), places[18], "twelve taken back");
  await again(page);
  assert.equal(await loaf(page), places[18], "where it was left");
  await redo.tap();
  assert.equal(await loaf(page), places[19], "made again after the reload");
  await undo.tap();
  await undo.tap();
  assert.equal(await loaf(page), places[17], "and taken back");
  await again(page);
  await keys("Control+z", 17);
  assert.equal(await loaf(page), places[0], "back to the beginning, before any snapshot");
  await again(page);
  await keys("Control+y", 30);
  assert.equal(await loaf(page), places[30], "and all the way on");
  assert.equal(await redo.isDisabled(), true, "nothing more ahead");
  assertClean(faults);
  await context.close();
});

test("a step after an undo replaces what was ahead, also after a reload", async () => {
  const { context, faults } = await guarded();
  const page = await begin(await started(context));
  const [undo, redo] = ["Undo", "Redo"].map((name) => page.getByRole("button", { name, exact: true }));
  await choose(page);
  const before = await loaf(page);
  // Quick nudges are one step.
  await nudge(page, "ArrowRight", 4);
  await undo.tap();
  assert.equal(await loaf(page), before, "four nudges are one step");
  await nudge(page, "ArrowDown");
  const down = await loaf(page);
  assert.equal(await redo.isDisabled(), true, "nothing ahead");
  await again(page);
  assert.equal(await loaf(page), down, "kept");
  assert.equal(await redo.isDisabled(), true, "nothing ahead after the reload");
  await undo.tap();
  assert.equal(await loaf(page), before, "taken back");
  assertClean(faults);
  await context.close();
});
