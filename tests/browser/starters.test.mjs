// New tables: laid ones to start from, an empty board, dishes of one's own; each
// is a layout of its own, and all of them are there without a network.

import assert from "node:assert/strict";
import { test } from "node:test";

import { ready, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, keptForOffline, phone, singleFile } from "./support.mjs";

const { guarded, started } = setUp();

/** At the choice of a new table. */
async function choosing(page) {
  await page.getByRole("button", { name: "Papers" }).click();
  await page.getByRole("button", { name: "Lay a new table" }).click();
  return page.getByRole("list", { name: "Laid tables to start from" });
}

test("every starter opens as a new layout, without a network too", async () => {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  const page = await started(context);
  await page.locator(".first .solid").click();
  await keptForOffline(page);
  await context.setOffline(true);
  await page.reload();
  await ready(page);
  for (const title of ["Citrus breakfast", "Noodle night", "Harbour supper"]) {
    const laid = await choosing(page);
    await laid.locator("svg:has(*)").nth(2).waitFor();
    await assertAccessible(page);
    await laid.getByRole("button", { name: title }).tap();
    await page.getByRole("region", { name: "Findings" }).waitFor();
    assert.equal(await page.locator(".head h1").innerText(), title, "it is open");
    assert.equal(await page.getByRole("alert").count(), 0, "nothing is wrong with it");
  }
  await page.getByRole("button", { name: "Papers" }).click();
  const kept = page.locator(".shelf .kept");
  await kept.nth(3).waitFor();
  assert.equal(await kept.count(), 4, "three more layouts, none in another's place");
  assertClean(faults);
  await context.close();
});

test("an empty board has the size, shape and surface asked for, and nothing on it", async () => {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  const page = await started(context);
  await page.locator(".first .solid").click();
  await choosing(page);
  await page.getByRole("button", { name: "An empty board" }).tap();
  await page.getByRole("button", { name: "round", exact: true }).tap();
  await page.getByText(/^Surface: /).tap();
  await page.getByRole("button", { name: "walnut" }).tap();
  await page.getByRole("button", { name: "Lay the board" }).tap();
  await page.getByText("Nothing stands here yet").waitFor();
  await page.getByText("Board, floor and frame", { exact: true }).tap();
  await page.getByText("Surface: walnut").waitFor();
  await assertAccessible(page);
  assertClean(faults);
  await context.close();
});

test("the single file holds the starters within", async () => {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" }, singleFile);
  const page = await started(context, singleFile);
  await page.locator(".first .solid").click();
  const laid = await choosing(page);
  await laid.getByRole("button", { name: "Noodle night" }).tap();
  await page.getByRole("heading", { name: "Noodle night" }).waitFor();
  assertClean(faults);
  await context.close();
});
