// The code beside a link, read off the screen by a decoder that did not draw
// it (npm jsqr), and what is said of a link too long for one.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

import { setUp } from "./setup.mjs";
import { assertClean, phone, require, root } from "./support.mjs";

const jsqr = require("jsqr").default;

const { guarded, started } = setUp();

/** A page with its papers open. */
async function papers() {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  const page = await started(context);
  await page.locator(".solid").tap();
  await page.getByRole("button", { name: "Now yours" }).tap();
  for (const dish of ["black olives", "rice", "dark-crusted loaf"]) {
    await page.getByRole("button", { name: dish, exact: true }).tap();
  }
  await page.getByRole("button", { name: "Lay the table" }).tap();
  await page.getByRole("button", { name: "Papers" }).tap();
  return { context, faults, page };
}

/** The pixels of a picture, by a page that holds nothing else. */
async function pixels(context, png) {
  const page = await context.newPage();
  const found = await page.evaluate(async (text) => {
    const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    const picture = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
    const canvas = new OffscreenCanvas(picture.width, picture.height);
    const brush = canvas.getContext("2d");
    brush.drawImage(picture, 0, 0);
    const { data, width, height } = brush.getImageData(0, 0, picture.width, picture.height);
    // A letter a pixel: a list of numbers takes long to hand over.
    const letter = (_, n) => (data[4 * n] < 128 ? "#" : " ");
    return { text: Array.from({ length: width * height }, letter).join(""), width, height };
  }, png.toString("base64"));
  await page.close();
  const shades = [...found.text].flatMap((letter) => (letter === "#" ? [0, 0, 0, 255] : [255, 255, 255, 255]));
  return { ...found, data: Uint8ClampedArray.from(shades) };
}

test("another camera reads the link off the screen", async () => {
  const { context, faults, page } = await papers();
  await page.getByRole("button", { name: "Make the link" }).tap();
  const link = await page.locator("input.link").inputValue();
  const { data, width, height } = await pixels(context, await page.locator(".code svg").screenshot());
  assert.equal(jsqr(data, width, height)?.data, link, "what the code says");
  assertClean(faults);
  await context.close();
});

test("a link too long for a code is said to be", async () => {
  const { context, faults, page } = await papers();
  const supper = await readFile(`${root}static/starters/harbour-supper.spread.json`);
  const file = { name: "supper.json", mimeType: "application/json", buffer: supper };
  await page.getByLabel("Open a file").setInputFiles(file);
  await page.getByRole("heading", { name: JSON.parse(supper).title }).waitFor();
  await page.getByRole("button", { name: "Make the link" }).tap();
  const link = await page.locator("input.link").inputValue();
  assert.ok(link.length > 858, "longer than a code of version 20 holds");
  assert.equal(await page.locator(".code svg").count(), 0, "no code is drawn");
  const instead = page.getByRole("region", { name: "Link for the client" });
  assert.match(await instead.innerText(), /too (long|large|much)/i, "and the page says so");
  assertClean(faults);
  await context.close();
});
