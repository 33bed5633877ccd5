// What mirrors light, camera and arm is shown all at once where they are set,
// and a tap on what helps takes it away.

import assert from "node:assert/strict";
import { test } from "node:test";

import { setUp } from "./setup.mjs";
import { assertAccessible, assertClean, phone } from "./support.mjs";

const { guarded, started } = setUp();

test("glare is shown where light and camera are set, and cured there", async () => {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  const page = await started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Papers" }).click();
  await page.getByRole("button", { name: "Lay a new table" }).click();
  const laid = page.getByRole("list", { name: "Laid tables to start from" });
  await laid.getByRole("button", { name: "Noodle night" }).tap();
  await page.getByRole("region", { name: "Findings" }).waitFor();
  await page.getByRole("button", { name: "Camera & light" }).tap();
  const patches = page.locator("svg path[fill-opacity='.42']");
  assert.equal(await patches.count(), 0, "not before it is asked for");
  await page.getByRole("button", { name: "glare", exact: true }).tap();
  const soup = page.getByText("The clear soup mirrors the camera and the arm");
  await soup.waitFor();
  await patches.first().waitFor({ state: "attached" });
  await assertAccessible(page);
  await page.getByRole("button", { name: "change places" }).tap();
  await soup.waitFor({ state: "detached" });
  await page.getByRole("button", { name: "nothing", exact: true }).tap();
  await page.waitForFunction(
    () => document.querySelectorAll("svg path[fill-opacity='.42']").length === 0,
  );
  assertClean(faults);
  await context.close();
});
