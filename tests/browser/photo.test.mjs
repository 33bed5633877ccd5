// Colour from a photo: chosen, tapped by finger or keys, taken, taken back; and
// files that are no photo one can read, which change nothing.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";
import { deflateSync } from "node:zlib";

import { setUp } from "./setup.mjs";
import { assertAccessible, assertClean, desk, phone, root } from "./support.mjs";

const { guarded, started } = setUp();

const supper = JSON.parse(await readFile(`${root}static/starters/harbour-supper.spread.json`, "utf8"));
const loaf = supper.items.find((item) => item.name === "loaf").id;

/** CRC-32 as PNG has it, bit by bit. */
function crc(bytes) {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit += 1) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
  }
  return ~sum >>> 0;
}

/** A PNG of rows of samples, `depth` bits each; `kind` 2 is red, green, blue and 0 is grey. */
function png(width, height, row, { depth = 8, kind = 2 } = {}) {
  const chunk = (name, data) => {
    const body = Buffer.concat([Buffer.from(name), data]);
    const [size, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
    size.writeUInt32BE(data.length);
    sum.writeUInt32BE(crc(body));
    return Buffer.concat([size, body, sum]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([depth, kind, 0, 0, 0], 8);
  const rows = Array.from({ length: height }, (_, y) => Buffer.from([0, ...row(y)]));
  return Buffer.concat([
    Buffer.from("89504e470d0a1a0a", "hex"),
    chunk("IHDR", head),
    chunk("IDAT", deflateSync(Buffer.concat(rows))),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

/** Paper left, thing right, in warm light one stop under: crust over crumb, three parts to one. */
const [PAPER, CRUST, CRUMB] = [[200, 180, 150], [100, 48, 20], [190, 150, 90]];
function scene(width = 480, height = 320) {
  const at = (x, y) => (x < width / 2 ? PAPER : y < height * 0.6 ? CRUST : CRUMB);
  return png(width, height, (y) => Array.from({ length: width }, (_, x) => at(x, y)).flat());
}

const file = (name, buffer, mimeType = "image/png") => ({ name, mimeType, buffer });

/** A page with the loaf chosen and its photo panel open. */
async function opened(options) {
  const { context, faults } = await guarded({ ...options, reducedMotion: "reduce" });
  const page = await started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Table", exact: true }).click();
  const things = page.getByRole("region", { name: "Things on the table" });
  await things.locator("button", { has: page.locator("span", { hasText: /^loaf$/ }) }).click();
  await page.locator(".chosen-strip + details > summary").click();
  const panel = page.locator(".chosen-strip + details details.photo");
  await panel.locator("summary").click();
  return { context, faults, page, panel };
}

const choose = (panel, chosen) => panel.locator("input[type=file]").setInputFiles(chosen);

/** Taps a place of the photo, in shares of its sides. */
async function tap(page, panel, x, y) {
  const shot = panel.locator(".shot");
  await shot.waitFor();
  await shot.scrollIntoViewIfNeeded();
  const box = await shot.boundingBox();
  await page.touchscreen.tap(box.x + box.width * x, box.y + box.height * y);
}

/** The food's tones on the panel, as it stands. */
const origins = (page) => page.locator(".chosen-strip + details div:has(> .line input[type=color]) .swatches");

/** The colours the loaf is drawn in. */
const fills = (page) =>
  page.locator(`.picture [data-key="item-${loaf}"] [fill]`).evaluateAll((paths) =>
    paths.map((path) => path.getAttribute("fill")).sort().join(" "),
  );

test("the thing, the paper, and it has the photo's colours until that is taken back", async () => {
  const { context, faults, page, panel } = await opened(phone);
  const before = await origins(page).last().innerText();
  assert.match(before, /a guess/, "the catalogue's guess at first");
  await choose(panel, file("loaf.png", scene()));
  await panel.getByText("Tap the loaf in the photo.").waitFor();
  await panel.getByRole("button", { name: "a wide patch" }).click();
  await tap(page, panel, 0.75, 0.6);
  await panel.getByText("Now tap white or grey paper").waitFor();
  await assertAccessible(page);
  await tap(page, panel, 0.2, 0.5);
  const found = panel.locator(".swatches li");
  await found.first().waitFor();
  const shares = (await found.allInnerTexts()).map((text) => Number(/(\d+)%/.exec(text)?.[1]));
  assert.equal(shares.length, 2, `crust and crumb: ${shares}`);
  assert.equal(shares[0] + shares[1], 100, "all of it");
  assert.ok(Math.abs(shares[0] - 50) <= 3, `half of each: ${shares}`);
  await assertAccessible(page);
  const drawn = await fills(page);
  await panel.getByRole("button", { name: "Take these 2 tones" }).click();
  await page.getByText("loaf: colour from a photo").first().waitFor();
  assert.match(await origins(page).last().innerText(), /from a photo/, "its origin is said");
  assert.notEqual(await fills(page), drawn, "the picture is another");
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await page.getByText("taken back: loaf: colour from a photo").first().waitFor();
  assert.equal(await origins(page).last().innerText(), before, "one step back");
  assert.equal(await fills(page), drawn, "and the picture as it was");
  assertClean(faults);
  await context.close();
});

test("keys alone do it", async () => {
  const { context, faults, page, panel } = await opened(desk);
  await choose(panel, file("loaf.png", scene()));
  const shot = panel.locator(".shot");
  await shot.waitFor();
  await shot.focus();
  const steps = async (key, count) => {
    for (let n = 0; n < count; n += 1) await page.keyboard.press(key);
  };
  // From the middle, 16 px a step: to the crust, then to the paper.
  await steps("ArrowRight", 6);
  await steps("ArrowUp", 2);
  await page.keyboard.press("Enter");
  await panel.getByText("Now tap white or grey paper").waitFor();
  await steps("ArrowLeft", 14);
  await page.keyboard.press("Shift+ArrowLeft");
  await page.keyboard.press("Enter");
  await panel.getByRole("button", { name: "Take this colour" }).click();
  await page.getByText("loaf: colour from a photo").first().waitFor();
  // Brought from warm light one stop under: lighter and less red than it stood in the photo.
  const fill = await origins(page).last().locator("path").getAttribute("fill");
  const [r, g, b] = [1, 3, 5].map((n) => Number.parseInt(fill.slice(n, n + 2), 16));
  assert.ok(r > CRUST[0] && g > CRUST[1] && b > CRUST[2], `lighter: ${fill}`);
  assert.ok(r / b < CRUST[0] / CRUST[2], `less warm: ${fill}`);
  assertClean(faults);
  await context.close();
});

test("what cannot be read is said, and nothing changes", async () => {
  const { context, faults, page, panel } = await opened(phone);
  const said = panel.getByRole("alert");
  const before = await origins(page).allInnerTexts();
  const huge = png(10_000, 10_000, () => Buffer.alloc(1_250), { depth: 1, kind: 0 });
  const inks = Buffer.from("ffd8ffe000104a46494600010100000100010000ffc0001408001000100401110002110003110004110000", "hex");
  for (const [chosen, words] of [
    [file("empty.jpg", Buffer.alloc(0), "image/jpeg"), /empty\.jpg is empty/],
    [file("notes.png", Buffer.from("two loaves, one knife")), /reads no picture in notes\.png/],
    [file("half.png", scene().subarray(0, 30)), /reads no picture in half\.png/],
    [file("vast.png", huge), /vast\.png has 100 million pixels/],
    [file("inks.jpg", inks, "image/jpeg"), /printing inks/],
  ]) {
    await choose(panel, chosen);
    await said.filter({ hasText: words }).waitFor();
    assert.match(await said.innerText(), /Nothing was changed/, chosen.name);
    assert.ok(await panel.locator(".shot").isHidden(), `no photo of ${chosen.name}`);
  }
  // A photo that can be read, in which what is tapped as paper cannot.
  await choose(panel, file("loaf.png", scene()));
  await tap(page, panel, 0.75, 0.8);
  await tap(page, panel, 0.75, 0.2);
  await said.filter({ hasText: "three stops too dark" }).waitFor();
  await tap(page, panel, 0.2, 0.5);
  await panel.getByRole("button", { name: "Take this colour" }).waitFor();
  assert.equal(await said.count(), 0, "the fault is gone with its cause");
  assert.deepEqual(await origins(page).allInnerTexts(), before, "nothing was taken");
  assertClean(faults);
  await context.close();
});

test("a photo lies as its file says, and is brought to a size a phone can hold", async () => {
  const { context, faults, page, panel } = await opened(phone);
  const flat = Buffer.from(
    await page.evaluate(async () => {
      const canvas = new OffscreenCanvas(3000, 1000);
      canvas.getContext("2d").fillRect(0, 0, 3000, 1000);
      const blob = await canvas.convertToBlob({ type: "image/jpeg" });
      return [...new Uint8Array(await blob.arrayBuffer())];
    }),
  );
  // EXIF with one entry: orientation 6, to be turned a quarter clockwise.
  const turned = Buffer.from("ffe1002245786966000049492a00080000000100120103000100000006000000" + "00000000", "hex");
  const size = () => panel.locator(".shot > canvas").evaluate(({ width, height }) => [width, height]);
  await choose(panel, file("flat.jpg", flat, "image/jpeg"));
  await panel.locator(".shot").waitFor();
  assert.deepEqual(await size(), [2048, 683], "as it is");
  await choose(panel, file("turned.jpg", Buffer.concat([flat.subarray(0, 2), turned, flat.subarray(2)]), "image/jpeg"));
  await page.waitForFunction(() => document.querySelector(".shot > canvas").width === 683);
  assert.deepEqual(await size(), [683, 2048], "upright");
  assertClean(faults);
  await context.close();
});
