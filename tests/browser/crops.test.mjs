// Crops as they are looked at: scores are of the crop in view and say so, and
// what a crop cuts is marked only beside the line of that crop.

import assert from "node:assert/strict";
import { test } from "node:test";

import { setUp } from "./setup.mjs";
import { assertAccessible, assertClean } from "./support.mjs";

const { guarded, site } = setUp();

/** At work on the first table, as it came. */
async function working(options) {
  const { context, faults } = await guarded(options);
  const page = await context.newPage();
  await page.goto(site.url);
  await page.waitForSelector("html[data-core=ready]");
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await page.getByRole("region", { name: "Findings" }).waitFor();
  await settled(page);
  return { context, faults, page };
}

const settled = (page) => page.locator(".scores .late").waitFor({ state: "detached" });
const go = (page, place) => page.getByRole("button", { name: place, exact: true }).click();
const scores = async (page) => {
  await settled(page);
  return page.locator(".scores").innerText();
};
/** Names on tape: of the crops whose lines are drawn. */
const lines = (page) => page.locator('.picture [data-key="crops"] text').allTextContents();
const marks = (page) => page.locator('.picture [data-key="marks"]').innerHTML();

/** Waits until other marks are drawn. */
const changed = (page, from) =>
  page.waitForFunction(
    (was) => document.querySelector('.picture [data-key="marks"]')?.innerHTML !== was,
    from,
  );

test("scores are of the crop in view, and the line says of which", async () => {
  const { context, faults, page } = await working();
  const whole = await scores(page);
  assert.doesNotMatch(whole, /\bin\b/, "the whole frame needs no name");
  await go(page, "Crops");
  const crop = page.locator(".keeps button", { hasText: "4:5 post" });
  await crop.click();
  await page.locator(".scores", { hasText: "in 4:5 post" }).waitFor();
  const within = await scores(page);
  assert.notEqual(within.replace(/\s*in 4:5 post/, ""), whole, "another picture, other scores");
  assert.deepEqual(await lines(page), ["4:5 post"], "its line alone is drawn");
  await assertAccessible(page);
  // What stands behind a score is of the same picture.
  const shown = /Balance\s+(\d+)/.exec(within)?.[1];
  await page.locator(".scores button", { hasText: "Balance" }).click();
  const told = await page.getByRole("region", { name: "How this is worked out" }).innerText();
  assert.ok(told.includes(shown ?? "no score"), `${shown} is worked out: ${told}`);
  await go(page, "Crops");
  await crop.click();
  await page.locator(".scores", { hasText: "in 4:5 post" }).waitFor({ state: "hidden" });
  assert.equal(await scores(page), whole, "the whole frame again");
  assertClean(faults);
  await context.close();
});

test("what a crop cuts is marked beside its line, and nowhere without it", async () => {
  const { context, faults, page } = await working();
  const finding = page.locator(".find > button", { hasText: "9:16 upright" }).first();
  await finding.waitFor();
  assert.deepEqual(await lines(page), [], "no crop is drawn where crops are not the matter");
  await finding.click();
  await page.locator('.picture [data-key="crops"] text', { hasText: "9:16 upright" }).waitFor({ state: "attached" });
  assert.deepEqual(await lines(page), ["9:16 upright"], "the finding brings the line it is about");
  await page.getByRole("region", { name: "How this is worked out" }).waitFor();
  await page.waitForTimeout(300);
  const cut = await marks(page);
  await finding.click();
  await changed(page, cut);
  assert.deepEqual(await lines(page), [], "and takes it away again");
  const rest = await marks(page);
  await go(page, "Crops");
  await changed(page, rest);
  assert.ok((await lines(page)).includes("9:16 upright"), "marks come with all lines among the crops");
  assertClean(faults);
  await context.close();
});
