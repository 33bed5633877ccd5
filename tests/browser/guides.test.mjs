// Mask guides made on the page: as many grey PNGs as there are exposures, of
// the camera's own pixels, and a sheet, in one archive; and what can be stopped.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";
import { inflateSync } from "node:zlib";

import { setUp } from "./setup.mjs";
import { assertClean, desk, phone, require } from "./support.mjs";

const { unzipSync } = require("fflate");
const { guarded, site } = setUp();

/** Size, depth, kind and pixels of a PNG of one channel without filters. */
function grey(png) {
  const view = new DataView(png.buffer, png.byteOffset, png.byteLength);
  const chunks = new Map();
  for (let at = 8; at < png.length; ) {
    const length = view.getUint32(at);
    const name = String.fromCharCode(...png.subarray(at + 4, at + 8));
    chunks.set(name, png.subarray(at + 8, at + 8 + length));
    at += length + 12;
  }
  const head = chunks.get("IHDR");
  const [wide, high] = [view.getUint32(16), view.getUint32(20)];
  const rows = inflateSync(chunks.get("IDAT"));
  assert.equal(rows.length, (wide + 1) * high, "all rows");
  let [white, black, soft] = [0, 0, 0];
  for (let y = 0; y < high; y += 1) {
    assert.equal(rows[y * (wide + 1)], 0, "no filter");
    for (let x = 1; x <= wide; x += 1) {
      const value = rows[y * (wide + 1) + x];
      if (value === 255) white += 1;
      else if (value === 0) black += 1;
      else soft += 1;
    }
  }
  return { size: [wide, high], depth: head[8], kind: head[9], white, black, soft };
}

/** Waits until only the worker that reads is left: ends are told late. */
async function oneWorker(page) {
  for (let n = 0; page.workers().length > 1 && n < 50; n += 1) await page.waitForTimeout(100);
  assert.equal(page.workers().length, 1, "the worker that reads is left");
}

/** The supper's papers, at work. */
async function papers(options) {
  const { context, faults } = await guarded({ ...options, acceptDownloads: true });
  const page = await context.newPage();
  await page.goto(site.url);
  await page.waitForSelector("html[data-core=ready]");
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Papers", exact: true }).click();
  const panel = page.getByRole("region", { name: "Mask guides" });
  await panel.waitFor();
  return { context, faults, page, panel };
}

test("guides of the supper in one archive", async () => {
  const { context, faults, page, panel } = await papers(desk);
  assert.match(await panel.innerText(), /4 files of 6000 × 4000 pixels, as usual for this sensor/);
  await panel.getByRole("button", { name: "Make the guides" }).click();
  await panel.getByText(/4 guides and their overview are ready, \d\.\d MB/).waitFor({ timeout: 120_000 });
  const coming = page.waitForEvent("download");
  await panel.getByRole("button", { name: "Save them in one zip file" }).click();
  const download = await coming;
  assert.equal(download.suggestedFilename(), "harbour-supper-mask-guides.zip");
  const files = unzipSync(new Uint8Array(await readFile(await download.path())));
  const names = ["01-clean.png", "02-hands-1.png", "03-hands-2.png", "04-hands-3.png"];
  assert.deepEqual(Object.keys(files), ["00-overview.svg", ...names]);
  const sheet = new TextDecoder().decode(files["00-overview.svg"]);
  for (const name of names) assert.ok(sheet.includes(name), `the sheet names ${name}`);
  for (const name of names) {
    const { size, depth, kind, white, black, soft } = grey(files[name]);
    assert.deepEqual([size, depth, kind], [[6000, 4000], 8, 0], `${name}: grey, 8 bits`);
    if (name === "01-clean.png") {
      assert.deepEqual([black, soft], [0, 0], "the lowest is white all over");
      continue;
    }
    const all = 6000 * 4000;
    assert.ok(white > all * 0.01 && black > all * 0.3, `${name}: white ${white}, black ${black}`);
    assert.ok(soft > all * 0.002 && soft < all * 0.3, `${name}: soft ${soft}`);
  }
  await page.getByRole("textbox", { name: "Title" }).fill("Another supper");
  await page.getByRole("textbox", { name: "Title" }).blur();
  await panel.getByText("as it was before the last change").waitFor();
  assertClean(faults);
  await context.close();
});

test("guides that are being made can be stopped, and made again", async () => {
  const { context, faults, panel, page } = await papers(phone);
  await panel.getByRole("button", { name: "Make the guides" }).click();
  await panel.getByRole("progressbar", { name: "How far the guides are" }).waitFor();
  await panel.getByRole("button", { name: "Stop" }).click();
  await panel.getByRole("progressbar").waitFor({ state: "detached" });
  await oneWorker(page);
  assert.equal(await panel.getByRole("button", { name: /Save/ }).count(), 0, "nothing to save");
  await panel.getByRole("button", { name: "Make the guides" }).click();
  await panel.getByText(/are ready/).waitFor({ timeout: 120_000 });
  await oneWorker(page);
  assertClean(faults);
  await context.close();
});

test("the sheet is shown, and printed alone", async () => {
  const { context, faults, page, panel } = await papers(phone);
  await page.evaluate(() => (globalThis.print = () => dispatchEvent(new Event("beforeprint"))));
  await panel.getByRole("button", { name: "Show where each goes" }).click();
  const picture = panel.getByRole("img", { name: /Where each exposure is seen/ });
  await picture.waitFor();
  const [wide, drawn] = await picture.evaluate(async (image) => {
    await image.decode();
    return [image.getBoundingClientRect().width, image.naturalWidth];
  });
  assert.ok(drawn > 1000 && wide <= 390, `${drawn}, ${wide} px on the phone`);
  await panel.getByRole("button", { name: "Print this sheet" }).click();
  await page.emulateMedia({ media: "print" });
  const printed = page.locator(".printed");
  await printed.locator("img").waitFor();
  assert.equal((await printed.innerText()).trim(), "", "nothing but the sheet");
  await page.evaluate(() => dispatchEvent(new Event("afterprint")));
  await page.emulateMedia({ media: "screen" });
  await printed.waitFor({ state: "detached" });
  assertClean(faults);
  await context.close();
});
