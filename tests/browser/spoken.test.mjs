// What who does not see the page is told of an act once it is done: its words
// stand where a screen reader listens.

import assert from "node:assert/strict";
import { test } from "node:test";

import { begin, go } from "./layouts.mjs";
import { setUp } from "./setup.mjs";
import { assertClean, phone } from "./support.mjs";

const { guarded, started } = setUp();

test("a nudge, a remedy, what is taken back and what is refused are told", async () => {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  const page = await begin(await started(context));
  const told = page.locator("[role=status].away");
  /** Waits until this is told first; what matters most now comes after it. */
  const says = async (words) => {
    const first = (text) => document.querySelector("[role=status].away").textContent.startsWith(`${text}. `);
    await page.waitForFunction(first, words).catch(async () => assert.equal(await told.textContent(), words));
  };
  const press = (name, within = page) => within.getByRole("button", { name, exact: true }).click();

  await page.locator("ul.things button", { hasText: "mussel pot" }).first().click();
  await page.locator(".picture").focus();
  await page.keyboard.press("ArrowRight");
  await says("mussel pot moved");
  await page.keyboard.press("Escape");

  const tape = page.locator(".find .tape").first();
  const remedy = await tape.locator("span").innerText();
  await tape.click();
  await says(remedy);
  await press("Undo");
  await says(`taken back: ${remedy}`);

  await go(page, "Crops");
  const ratio = page.getByRole("form", { name: "Own ratio" });
  await page.locator("summary", { hasText: "Own ratio" }).click();
  await ratio.getByLabel("Wide").fill("50");
  await ratio.getByLabel("High").fill("1");
  await press("Add it", ratio);
  // At once, and over whatever else is being said.
  await page.getByRole("alert").getByText("at most 20 to 1").waitFor();
  assertClean(faults);
  await context.close();
});
