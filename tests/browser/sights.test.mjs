// Ways to look at the picture: in grey, squinting, in a mirror.

import assert from "node:assert/strict";
import { test } from "node:test";

import { setUp } from "./setup.mjs";
import { assertAccessible, assertClean, painted, phone } from "./support.mjs";

const at = setUp();

/** Middle of a thing, or of the whole picture, on the screen, px. */
async function middle(page, key) {
  const what = key === undefined ? ".picture > svg:first-of-type" : `.picture [data-key="${key}"]`;
  const box = await page.locator(what).boundingBox();
  return box.x + box.width / 2;
}

test("the picture is looked at in grey, squinting and in a mirror", async () => {
  const { context, faults } = await at.guarded({ ...phone, reducedMotion: "reduce" });
  const page = await at.started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Table", exact: true }).click();
  const sights = page.getByRole("group", { name: "Look at it" });
  const drawing = page.locator(".picture > svg > g").first();
  const filter = () => drawing.evaluate((g) => getComputedStyle(g).filter);
  assert.equal(await filter(), "none", "as it is at first");

  await sights.getByRole("button", { name: "in grey" }).click();
  assert.match(await filter(), /#sight-grey/, "a filter on the drawing");
  const weights = await page.locator("#sight-grey feColorMatrix").getAttribute("values");
  const row = weights.split(/\s+/).slice(0, 3).map(Number);
  assert.ok(Math.abs(row[0] + row[1] + row[2] - 1) < 1e-9, "white stays white");
  await assertAccessible(page);

  await sights.getByRole("button", { name: "squinting" }).click();
  assert.match(await filter(), /#sight-squint/, "blurred");

  await sights.getByRole("button", { name: "as it is" }).click();
  const key = await page.locator('.picture [data-key^="item-"]').first().getAttribute("data-key");
  const [frame, before] = [await middle(page), await middle(page, key)];
  await sights.getByRole("button", { name: "in a mirror" }).click();
  assert.equal(await filter(), "none", "no filter");
  const then = await middle(page, key);
  assert.ok(Math.abs(then + before - 2 * frame) < 3, `about its middle: ${before}, ${then}, ${frame}`);
  const tag = page.locator('.picture [data-key="tags"] text').first();
  const upright = await tag.evaluate((text) => text.getScreenCTM().a > 0);
  assert.ok(upright, "tags are not in mirror writing");

  await page.getByRole("button", { name: "Hands", exact: true }).click();
  await painted(page);
  const back = await middle(page, key);
  assert.ok(Math.abs(back - before) < 3, "elsewhere it is as it is");
  assertClean(faults);
  await context.close();
});

test("triangles of fingertips and accents are shown on request, on the picture and in the note", async () => {
  const { context, faults } = await at.guarded({ ...phone, reducedMotion: "reduce" });
  const page = await at.started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await page.locator(".scores button", { hasText: "Triangle" }).click();
  const choice = page.getByRole("group", { name: "A triangle of" });
  const marks = () => page.locator('.picture [data-key="marks"]').innerHTML();
  const working = page.getByRole("region", { name: "How this is worked out" });
  await choice.getByRole("button", { name: "hero and main dishes", pressed: true }).waitFor();
  const drawn = [await marks()];
  const notes = [await working.innerText()];
  for (const corners of ["fingertips", "accents"]) {
    await choice.getByRole("button", { name: corners }).click();
    await choice.getByRole("button", { name: corners, pressed: true }).waitFor();
    await page.waitForFunction(
      (old) => document.querySelector('.picture [data-key="marks"]').innerHTML !== old,
      drawn.at(-1),
    );
    drawn.push(await marks());
    notes.push(await working.innerText());
  }
  assert.equal(new Set(drawn).size, 3, "each has marks of its own");
  assert.equal(new Set(notes).size, 3, "and figures of its own");
  for (const note of notes) assert.match(note, /Score \d+/, "a figure");
  await assertAccessible(page);
  assertClean(faults);
  await context.close();
});
