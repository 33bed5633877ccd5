// Two tabs over the same layouts: one writes each, the other takes over when it
// has gone, and what one has open the other does not change behind its back.

import assert from "node:assert/strict";
import { test } from "node:test";

import { begin, choose, go, loaf, saved } from "./layouts.mjs";
import { ready, setUp } from "./setup.mjs";
import { assertClean, painted, phone } from "./support.mjs";

const { guarded, started } = setUp();
const still = { ...phone, reducedMotion: "reduce" };

const shown = (page) => page.locator(".notice").getByText("Another tab is working on this layout");

/** Waits until the browser has let go of what a closed tab held, so that `left` tabs hold a layout. */
const gone = (page, left) =>
  page.waitForFunction(async (count) => (await navigator.locks.query()).held.length === count, left);

async function lay(page, title) {
  await go(page, "Papers");
  await page.getByRole("button", { name: "Lay a new table" }).click();
  await page.getByRole("button", { name: title }).click();
  await page.getByRole("heading", { name: title }).waitFor();
  await saved(page);
}

test("two tabs work on different layouts, and one takes over when the other has gone", async () => {
  const { context, faults } = await guarded(still);
  const first = await begin(await started(context));
  const second = await started(context);
  await shown(second).waitFor();
  await lay(second, "Citrus breakfast");
  assert.equal(await shown(second).count(), 0, "its own it may change");

  // What is open in the first is neither renamed, deleted nor overwritten in the second.
  await go(second, "Papers");
  await second.getByRole("button", { name: "Delete “Harbour supper”" }).click();
  await second.getByRole("alert").getByText("Another tab has this layout open").waitFor();
  await second.getByRole("button", { name: "Understood" }).click();
  await second.getByRole("button", { name: "Rename “Harbour supper”" }).click();
  await second.locator(".shelf input").fill("Late supper");
  await second.locator(".shelf input").press("Enter");
  await second.getByRole("alert").getByText("Another tab has this layout open").waitFor();

  const before = await loaf(first);
  await choose(first);
  await first.keyboard.press("ArrowRight");
  const moved = await loaf(first);
  assert.notEqual(moved, before);
  await saved(first);
  await first.close();
  await gone(second, 1);
  await second.locator(".kept", { hasText: "Harbour supper" }).click();
  await second.getByRole("heading", { name: "Harbour supper" }).waitFor();
  assert.equal(await shown(second).count(), 0, "it took over");
  assert.equal(await loaf(second), moved, "with what the first did");

  const third = await started(context);
  await shown(third).waitFor();
  await second.close();
  await gone(third, 0);
  await third.reload();
  await ready(third);
  assert.equal(await shown(third).count(), 0, "after a reload");
  await choose(third);
  await third.keyboard.press("Control+z");
  assert.equal(await loaf(third), before, "and takes back what another tab did");
  await saved(third);
  assertClean(faults);
  await context.close();
});

test("a file of what another tab has open is only shown", async () => {
  const { context, faults } = await guarded(still);
  const first = await begin(await started(context));
  const before = await loaf(first);
  await choose(first);
  await first.keyboard.press("ArrowRight");
  const moved = await loaf(first);
  await saved(first);
  const second = await started(context);
  await go(second, "Papers");
  const download = second.waitForEvent("download");
  await second.getByRole("button", { name: "Save as a file", exact: true }).click();
  const old = await (await download).path();
  await first.keyboard.press("Control+z");
  await saved(first);
  await second.getByLabel("Open a file").setInputFiles(old);
  await second.waitForFunction((was) => document.querySelector(".picture [data-key=item-3]").getAttribute("transform") === was, moved);
  await shown(second).waitFor();
  await first.reload();
  await ready(first);
  await painted(first);
  assert.equal(await loaf(first), before, "the first has what it did itself");
  assert.ok(await first.getByRole("button", { name: "Redo" }).isEnabled(), "with its steps");
  assertClean(faults);
  await context.close();
});
