// What the planner proposes: looked for in the worker, shown as ghosts, made
// whole or move by move, taken back, ended half way; and a way out of one finding.

import assert from "node:assert/strict";
import { test } from "node:test";

import { kinds, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, desk, painted, phone } from "./support.mjs";

const at = setUp();

/** Opens the table as it first stands, at work. */
async function table(options) {
  const { context, faults } = await at.guarded({ ...options, reducedMotion: "reduce" });
  const page = await at.started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Table", exact: true }).click();
  const undo = page.getByRole("button", { name: "Undo", exact: true });
  await undo.click();
  const panel = page.locator("details.propose");
  await panel.locator("summary").click();
  return { page, context, faults, panel, undo };
}

const marks = (page) =>
  page.locator('.picture [data-key="marks"]').evaluate((g) => g.querySelectorAll("path").length);
const runner = (page) =>
  page.locator('.picture [data-key="linen-26"]').evaluate((g) => g.getBoundingClientRect().width);

for (const [name, options] of kinds([
  ["phone", phone],
  ["desk in the dark", { ...desk, colorScheme: "dark" }],
])) {
  test(`three ways are found, one is made and taken back, another move by move, on a ${name}`, async () => {
    const { page, context, faults, panel, undo } = await table(options);
    await panel.getByRole("button", { name: "Look for three ways" }).click();
    await panel.getByRole("progressbar").waitFor();
    const ways = panel.locator(".way");
    await panel.getByRole("button", { name: "Put them away" }).waitFor({ timeout: 120_000 });
    assert.equal(await ways.count(), 3, "three ways");
    const scrolled = await page.evaluate(() => document.scrollingElement.scrollTop);
    assert.equal(scrolled, 0, "the picture stays in sight");
    const top = await ways.first().evaluate((way) => {
      const beside = way.closest(".say").getBoundingClientRect();
      return (way.getBoundingClientRect().top - beside.top) / beside.height;
    });
    assert.ok(top > -0.05 && top < 0.5, `what was found comes to the top: ${top}`);
    await assertAccessible(page);
    const names = await ways.locator("b").allInnerTexts();
    assert.equal(new Set(names).size, 3, `each of its own character: ${names}`);
    const ghosts = await marks(page);
    await ways.nth(2).locator("button").first().click();
    const third = await ways.nth(2).evaluate((way) => {
      const beside = way.closest(".say").getBoundingClientRect();
      return (way.getBoundingClientRect().top - beside.top) / beside.height;
    });
    assert.ok(third > -0.05 && third < 0.9, `another that is opened is in sight: ${third}`);
    await ways.first().locator("button").first().click();
    const moves = ways.first().locator(".move");
    await moves.first().getByRole("button").first().click();
    assert.ok((await marks(page)) < ghosts, "one move alone has fewer ghosts");
    await moves.first().getByRole("button").first().click();

    const before = await runner(page);
    await ways.first().getByRole("button", { name: /Do all of it/ }).click();
    await painted(page);
    assert.ok((await runner(page)) > before * 1.5, "the runner is laid");
    await ways.first().locator(".move .quiet").first().waitFor();
    assert.equal(await ways.first().getByText("done", { exact: true }).count(), await moves.count(), "all done");
    await undo.click();
    await painted(page);
    assert.equal(Math.round(await runner(page)), Math.round(before), "taken back in one step");

    // Accepted by itself, a move leaves the others to be made.
    await ways.first().getByRole("button", { name: "Do this" }).first().click();
    await painted(page);
    assert.equal(await ways.first().getByText("done", { exact: true }).count(), 1, "one is done");
    await ways.first().getByRole("button", { name: /Do the rest/ }).click();
    await painted(page);
    assert.equal(await ways.first().getByText("done", { exact: true }).count(), await moves.count(), "now all are");
    await panel.getByRole("button", { name: "Put them away" }).click();
    assert.equal(await ways.count(), 0, "put away");
    assertClean(faults);
    await context.close();
  });
}

test("a search ends when it is stopped, and when the table changes", async () => {
  const { page, context, faults, panel } = await table(desk);
  const look = panel.getByRole("button", { name: /^Look (for three ways|again)$/ });
  await look.click();
  await panel.getByRole("button", { name: "Stop looking" }).click();
  await look.waitFor();
  await look.click();
  await panel.getByRole("progressbar").waitFor();
  await page.getByRole("button", { name: "Redo", exact: true }).click();
  await panel.getByRole("progressbar").waitFor({ state: "detached" });
  // Nothing of what was begun comes in later.
  await page.waitForTimeout(1500);
  assert.equal(await panel.getByRole("progressbar").count(), 0, "it stays ended");
  for (const word of ["dishes", "cloth", "hands", "crops", "light"]) {
    await panel.getByRole("button", { name: word, exact: true }).click();
  }
  assert.ok(await look.isDisabled(), "nothing may be moved");
  assertClean(faults);
  await context.close();
});

test("a way out of one finding is looked for where it is told", async () => {
  const { page, context, faults } = await table(phone);
  await page.getByRole("button", { name: /^and \d+ notes/ }).click();
  const finding = page.locator(".find").filter({ hasText: "mirrors the arm" });
  await finding.getByRole("button", { name: /mirrors the arm/ }).first().click();
  await finding.getByRole("button", { name: "Look for a way out" }).click();
  const way = finding.locator(".way").first();
  await way.waitFor({ timeout: 120_000 });
  await way.getByRole("button", { name: /Do all of it/ }).click();
  await page.locator(".find").filter({ hasText: "mirrors the arm" }).waitFor({ state: "detached", timeout: 30_000 });
  assertClean(faults);
  await context.close();
});
