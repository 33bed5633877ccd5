// The see-through plan as it leaves the page: a PNG of the camera's own pixels,
// empty but for its lines.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

import { kinds, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, desk, phone } from "./support.mjs";

const { guarded, site, started } = setUp();

/** A board in the middle, 400 × 300 mm and flat, in a frame of 1200 × 800. */
const table = {
  format: "overspread-layout",
  version: 0,
  id: "00000000000000ad",
  title: "A board",
  next_id: 20,
  table: { width: 2000, depth: 1400 },
  camera: { pixels: [3000, 2000] },
  frame: { ratio: [3, 2], at: [1000, 700], width: 1200 },
  items: [
    { id: 1, name: "board", at: [1000, 700], height: 1, size: { shape: "rect", width: 400, depth: 300 } },
  ],
  people: [{ id: 2 }],
  exposures: [{ id: 3 }, { id: 4 }],
  hands: [
    { id: 5, person: 2, exposure: 3, entry: [1000, 1100], target: [1000, 950] },
    { id: 6, person: 2, exposure: 4, entry: [400, 500], target: [600, 500] },
  ],
};

/** At the papers of a layout. */
async function papers(options, laid) {
  const { context, faults } = await guarded({ ...options, reducedMotion: "reduce" }, site.url);
  const page = await started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Papers", exact: true }).click();
  const buffer = Buffer.from(JSON.stringify(laid));
  await page
    .getByLabel("Open a file")
    .setInputFiles({ name: "board.json", mimeType: "application/json", buffer });
  await page.getByRole("heading", { name: laid.title }).waitFor();
  return { context, faults, page, part: page.getByRole("region", { name: "See-through plan" }) };
}

/** The picture that is saved: its bytes, size, and the pixels at these places. */
async function saved(page, part, places) {
  const download = page.waitForEvent("download");
  await part.getByRole("button", { name: /^Save it/ }).last().click();
  const file = await download;
  assert.equal(file.suggestedFilename(), "a-board-see-through.png");
  const bytes = await readFile(await file.path());
  assert.equal(bytes.toString("latin1", 1, 4), "PNG");
  assert.equal(bytes[25], 6, "colour with alpha");
  const size = [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
  const pixels = await page.evaluate(
    async ([base64, at]) => {
      const raw = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
      const bitmap = await createImageBitmap(new Blob([raw], { type: "image/png" }));
      const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
      const context = canvas.getContext("2d");
      context.drawImage(bitmap, 0, 0);
      return at.map(([x, y]) => [...context.getImageData(x, y, 1, 1).data]);
    },
    [bytes.toString("base64"), places],
  );
  return { size, pixels };
}

for (const [name, options] of kinds([["phone", phone], ["desk", desk]])) {
  test(`a ${name} saves the plan at the camera's pixels, without a ground`, async () => {
    const { context, faults, page, part } = await papers(options, table);
    await part.getByRole("button", { name: "no hands" }).click();
    await assertAccessible(page);
    // 2.5 pixels a mm: the board from 1000 to 2000 and from 625 to 1375.
    const edge = [[1000, 1000], [2000, 1000]];
    const empty = [[1500, 1000], [500, 500], [2500, 1600], [1500, 1700]];
    const bare = await saved(page, part, [...edge, ...empty]);
    assert.deepEqual(bare.size, [3000, 2000]);
    for (const [r, , , alpha] of bare.pixels.slice(0, 2)) {
      assert.ok(alpha === 255 && r > 200, `a light line: ${r}, ${alpha}`);
    }
    for (const [n, [, , , alpha]] of bare.pixels.slice(2).entries()) {
      assert.equal(alpha, 0, `nothing at ${empty[n]}`);
    }
    await part.getByText("3000 × 2000 pixels, your camera’s own: ready.").waitFor();
    // Around the tip of the first hand, and across the arm of the second.
    const across = (x, y, dx, dy) => Array.from({ length: 320 }, (_, n) => [x + dx * n, y + dy * n]);
    const first = across(1340, 1680, 1, 0);
    const second = across(260, 360, 0, 1);
    const some = (pixels) => pixels.some(([, , , alpha]) => alpha === 255);
    await part.getByRole("button", { name: "1", exact: true }).click();
    const one = await saved(page, part, [...first, ...second]);
    assert.ok(some(one.pixels.slice(0, 320)), "the first hand is there");
    assert.ok(!some(one.pixels.slice(320)), "and the second is not");
    assertClean(faults);
    await context.close();
  });
}

test("a print of any size is a crop with what a printer asks for", async () => {
  const { context, faults, page } = await papers(phone, table);
  await page.getByRole("button", { name: "Crops", exact: true }).click();
  await page.locator("summary", { hasText: "Own print size" }).click();
  const form = page.getByRole("form", { name: "Own print size" });
  await form.getByLabel("Wide, mm").fill("148");
  await form.getByLabel("High, mm").fill("9");
  await form.getByRole("button").click();
  await page.getByRole("alert").filter({ hasText: "whole mm from 10 to 5000" }).waitFor();
  await form.getByLabel("High, mm").fill("105");
  await form.getByRole("button").click();
  await page.locator("summary", { hasText: "148 × 105 mm print, " }).click();
  await page.getByText("3 mm in print").waitFor();
  await page.getByText(/ppi in print/).first().waitFor();
  assertClean(faults);
  await context.close();
});

test("without told pixels it says whose they are, and half is offered where there is no room", async () => {
  const { camera, ...rest } = table;
  assert.deepEqual(camera, { pixels: [3000, 2000] });
  const { context, faults, page, part } = await papers(desk, rest);
  // A device that keeps no stroke on a canvas of more than ten million pixels.
  await page.evaluate(() => {
    const read = CanvasRenderingContext2D.prototype.getImageData;
    CanvasRenderingContext2D.prototype.getImageData = function (...at) {
      const { width, height } = this.canvas;
      return width * height > 1e7 ? new ImageData(1, 1) : read.apply(this, at);
    };
  });
  await part.getByRole("button", { name: "Save it, transparent" }).click();
  await part.getByText("This device has no room for a picture of 6000 × 4000 pixels.").waitFor();
  await assertAccessible(page);
  const half = await saved(page, part, [[0, 0]]);
  assert.deepEqual(half.size, [3000, 2000]);
  await part.getByText("3000 × 2000 pixels: ready. Lay it over at twice its size.").waitFor();
  await page.reload();
  await page.getByRole("heading", { name: rest.title }).waitFor();
  await page.getByRole("button", { name: "Papers", exact: true }).click();
  const whole = await saved(page, part, [[0, 0]]);
  assert.deepEqual(whole.size, [6000, 4000]);
  await part.getByText("6000 × 4000 pixels, as usual for this sensor: ready.").waitFor();
  assertClean(faults);
  await context.close();
});
