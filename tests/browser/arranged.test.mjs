// Arrangements: three to choose from where a table is begun, and for an open one.

import assert from "node:assert/strict";
import { test } from "node:test";

import { setUp } from "./setup.mjs";
import { assertAccessible, assertClean, painted, phone } from "./support.mjs";

const { guarded, started } = setUp();

/** Where every thing on the table stands. */
const places = (page) =>
  page.evaluate(() =>
    [...document.querySelectorAll(".picture [data-key^=item-]")]
      .map((thing) => `${thing.dataset.key} ${thing.getAttribute("transform") ?? thing.innerHTML}`)
      .join("\n"),
  );

test("one of three arrangements is laid, and another is one step away", async () => {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  const page = await started(context);
  await page.locator(".solid").tap();
  await page.getByRole("button", { name: "Now yours" }).tap();
  await page.getByRole("group", { name: "People at the table" }).getByRole("button", { name: "One fewer" }).tap();
  await page.getByRole("group", { name: "People at the table" }).getByRole("button", { name: "One fewer" }).tap();
  for (const dish of ["pot of mussels", "dark-crusted loaf", "black olives"]) {
    await page.getByRole("button", { name: dish, exact: true }).tap();
  }
  const arrangements = page.getByRole("group", { name: "Arrangement" });
  const one = (name) => arrangements.getByRole("button", { name });
  await one("To one side").waitFor();
  for (const name of ["Round the hero", "Corner to corner", "To one side"]) {
    // Each is drawn, one after another.
    await one(name).locator("svg path").nth(20).waitFor({ state: "attached" });
  }
  assert.equal(await one("Round the hero").getAttribute("aria-pressed"), "true", "the first is chosen");
  await assertAccessible(page);
  await one("Corner to corner").focus();
  await page.keyboard.press("Enter");
  assert.equal(await one("Corner to corner").getAttribute("aria-pressed"), "true", "by the keyboard");
  await page.getByRole("button", { name: "Lay the table" }).tap();
  await page.getByRole("region", { name: "Findings" }).waitFor();
  const laid = await places(page);

  await page.getByRole("button", { name: "Arrange anew" }).tap();
  await one("To one side").waitFor();
  await assertAccessible(page);
  await one("Round the hero").tap();
  await page.getByText("arranged: Round the hero", { exact: true }).waitFor();
  const ring = await places(page);
  await one("To one side").tap();
  await page.getByText("arranged: To one side", { exact: true }).waitFor();
  const side = await places(page);
  assert.equal(new Set([laid, ring, side]).size, 3, "three pictures");
  assert.equal(await one("To one side").getAttribute("aria-pressed"), "true", "it says which is laid");
  await page.getByRole("button", { name: "Undo" }).tap();
  assert.equal(await places(page), laid, "one step back");
  assert.equal(await page.getByRole("button", { name: "Undo" }).isEnabled(), false, "and no other");

  await page.getByRole("button", { name: "Hands", exact: true }).tap();
  await page.getByRole("button", { name: "squeeze lemon" }).tap();
  await page.getByRole("button", { name: "Table", exact: true }).tap();
  await painted(page);
  assert.equal(await page.getByRole("button", { name: "Arrange anew" }).count(), 0, "hands rest on it");
  assertClean(faults);
  await context.close();
});

test("a table too full says which arrangement has no room", async () => {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  const page = await started(context);
  await page.locator(".solid").tap();
  await page.getByRole("button", { name: "Now yours" }).tap();
  for (const dish of ["pot of mussels", "seared aubergine", "roast fish", "roast potatoes", "leaf salad"]) {
    await page.getByRole("button", { name: dish, exact: true }).tap();
  }
  await page.getByText("To one side: no room for all of it").waitFor();
  await page.getByRole("button", { name: "Lay the table" }).tap();
  await page.getByRole("region", { name: "Findings" }).waitFor();
  assertClean(faults);
  await context.close();
});
