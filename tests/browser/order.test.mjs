// The running order among the papers: when each exposure is shot, how long
// food holds.

import assert from "node:assert/strict";
import { test } from "node:test";

import { kinds, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, desk, phone } from "./support.mjs";

const at = setUp();

for (const [name, options] of kinds([
  ["phone", phone],
  ["desk in the dark", { ...desk, colorScheme: "dark" }],
])) {
  test(`food that dies early is shot first on a ${name}`, async () => {
    const { context, faults } = await at.guarded({ ...options, reducedMotion: "reduce" });
    const page = await at.started(context);
    await page.locator(".first .solid").click();
    await page.getByRole("button", { name: "Papers", exact: true }).click();
    const paper = page.getByRole("region", { name: "Running order" });
    const turns = paper.locator(".order > li");
    assert.match(await turns.first().innerText(), /0:00–0:03/, "the first begins at nothing");
    assert.match(await paper.innerText(), /A, both hands, from 9 o’clock/);
    assert.match(await paper.innerText(), /holds the release|set the timer/);
    await paper.getByText("Food, and how long it holds").click();
    const bread = paper.getByRole("region", { name: "torn bread" }).first();
    const holds = bread.getByRole("group", { name: "Holds for" });
    const before = await holds.locator("output").innerText();
    await holds.getByRole("button", { name: /a shorter time$/ }).click();
    assert.notEqual(await holds.locator("output").innerText(), before, "a shorter time");
    await assertAccessible(page);
    assertClean(faults);
    await context.close();
  });
}
