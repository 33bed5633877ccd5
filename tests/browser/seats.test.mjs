// Whose a hand is: where its person sits or stands, how tall they are, what
// they wear; and an exposure that shows a thing twice is put right.

import assert from "node:assert/strict";
import { test } from "node:test";

import { kinds, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, desk, phone } from "./support.mjs";

const at = setUp();

for (const [name, options] of kinds([
  ["phone", phone],
  ["desk in the dark", { ...desk, colorScheme: "dark" }],
])) {
  test(`a hand gets another place at the table on a ${name}`, async () => {
    const { context, faults } = await at.guarded({ ...options, reducedMotion: "reduce" });
    const page = await at.started(context);
    await page.locator(".first .solid").click();
    await page.getByRole("button", { name: "Hands", exact: true }).click();
    const list = page.getByRole("list", { name: "Hands in the picture" });
    await list.getByRole("button").first().click();
    const strip = page.locator(".chosen-strip");
    const from = strip.getByRole("group", { name: "Comes from" });
    const before = await from.locator("output").innerText();
    const drawn = () =>
      page
        .locator('.picture [data-key="hand-33"]')
        .evaluate((g) => [...g.querySelectorAll("path")].map((path) => path.getAttribute("d")).join(" "));
    const arm = await drawn();
    await from.getByRole("button", { name: "An hour on" }).click();
    assert.notEqual(await from.locator("output").innerText(), before, "an hour on");
    assert.notEqual(await drawn(), arm, "the arm comes from there");
    await strip.getByRole("button", { name: "Let them stand" }).click();
    await strip.getByRole("button", { name: "Let them sit" }).waitFor();
    await strip.locator("summary").click();
    await strip.getByRole("button", { name: /taller$/ }).click();
    await strip.getByRole("group", { name: "Ring" }).getByRole("button", { name: "left hand" }).click();
    await strip.getByLabel("Agreed in writing to be photographed").check();
    await assertAccessible(page);
    // Steps taken quickly after each other are one.
    for (let step = 0; step < 5 && (await drawn()) !== arm; step += 1) {
      await page.getByRole("button", { name: "Undo", exact: true }).click();
      await page.waitForTimeout(300);
    }
    assert.equal(await drawn(), arm, "as it was drawn");
    assert.equal(await from.locator("output").innerText(), before, "as it was");
    assertClean(faults);
    await context.close();
  });
}

test("the carafe is taken out of its place where a hand pours from it", async () => {
  const { context, faults } = await at.guarded({ ...phone, reducedMotion: "reduce" });
  const page = await at.started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Hands", exact: true }).click();
  await page.getByRole("button", { name: "Table", exact: true }).click();
  const told = page.getByText("stands in its place in exposure 3");
  await told.first().waitFor();
  await page.getByRole("button", { name: /Take the oil carafe out of its place/ }).first().click();
  await told.first().waitFor({ state: "detached" });
  assertClean(faults);
  await context.close();
});
