// A layout, or a step of one, over which the core falls at every start: it is set
// aside, named, offered as a file and still kept, and the page opens without it.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

import { begin, choose, falling, go, loaf, saved, steps } from "./layouts.mjs";
import { setUp } from "./setup.mjs";
import { assertAccessible, assertClean, phone } from "./support.mjs";

const { guarded, started } = setUp();

/** The first table with three steps after it, closed. Returns where the loaf stood. */
async function closed(context) {
  const page = await begin(await started(context));
  await page.evaluate(steps);
  await choose(page);
  const places = [await loaf(page)];
  for (const key of ["ArrowRight", "ArrowDown", "ArrowRight"]) {
    await page.keyboard.press(key);
    places.push(await loaf(page));
  }
  await saved(page);
  await page.close();
  return places;
}

async function asideFile(page) {
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save what is set aside" }).click();
  return JSON.parse(await readFile(await (await download).path(), "utf8"));
}

for (const [name, drawn] of [["opening", false], ["drawing", true]]) {
  test(`a layout that stops the planner at ${name} is set aside for another`, async () => {
    const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
    const places = await closed(context);
    await context.addInitScript(falling, { title: "Harbour supper", most: -1, drawn });
    const page = await started(context);
    await page.getByRole("alert").getByText("“Harbour supper” stopped the planner and is set aside").waitFor();
    assert.equal(await page.getByRole("alert").count(), 1, "and nothing else went wrong");
    // The first table comes as another layout; that which was set aside is still kept.
    await page.locator(".first .solid").click();
    await assertAccessible(page);
    const out = await asideFile(page);
    assert.equal(out.layouts[0].title, "Harbour supper");
    assert.equal(out.steps.length, 4, "with all its steps");
    await page.getByRole("button", { name: "Understood" }).click();
    await saved(page);
    await go(page, "Papers");
    await page.locator(".kept").nth(1).waitFor();
    assert.equal(await page.locator(".kept").count(), 2);
    await page.close();

    // A planner that bears it opens it as it was.
    const { context: other, faults: others } = await guarded({ ...phone, reducedMotion: "reduce" });
    const next = await started(other);
    await next.locator(".first .solid").click();
    await go(next, "Papers");
    const alone = { ...out, layouts: [{ ...out.layouts[0], id: "00000000000000b1" }] };
    await next.getByLabel("Open a file").setInputFiles({ name: "aside.json", mimeType: "application/json", buffer: Buffer.from(JSON.stringify(alone)) });
    await next.locator(".kept").nth(1).waitFor();
    assert.equal(places.length, 4);
    assertClean(faults);
    assertClean(others);
    await context.close();
    await other.close();
  });

  test(`a step that stops the planner at ${name} is left out and named`, async () => {
    const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
    const places = await closed(context);
    // The remedy of the first visit and two of the nudges.
    await context.addInitScript(falling, { title: "Harbour supper", most: 3, drawn });
    const page = await started(context);
    const alert = page.getByRole("alert");
    await alert.getByText(/^The step “loaf moved.*” of “Harbour supper” stopped the planner twice/).waitFor();
    assert.equal(await loaf(page), places[2], "as it was before that step");
    const out = await asideFile(page);
    assert.equal(out.steps.length, 4, "which is in the file");
    await page.getByRole("button", { name: "Understood" }).click();
    await choose(page);
    await page.keyboard.press("Control+z");
    assert.equal(await loaf(page), places[1], "the steps before it are still there");
    await saved(page);
    await page.reload();
    await page.waitForSelector("html[data-core=ready]");
    assert.equal(await page.getByRole("alert").count(), 0, "and it stops no further start");
    assert.equal(await loaf(page), places[1]);
    assertClean(faults);
    await context.close();
  });
}
