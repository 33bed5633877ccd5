// A prop of one's own traced over a photo of it: by taps, by a stroke, by keys;
// its true size, where it is kept, what is not a photo, and kept things that
// cannot be read.

import assert from "node:assert/strict";
import { test } from "node:test";

import { long, ready, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, desk, phone } from "./support.mjs";

const { guarded, started } = setUp();

/** A photo of a prop at 4 px a millimetre with a ruler of 100 mm under it, as a PNG. */
const [WIDE, HIGH, PER_MM] = [1200, 900, 4];
const RULER = [[100, 840], [500, 840]];
/** An L, 200 by 140 mm with arms of 50. */
const L = [[200, 120], [400, 120], [400, 480], [1000, 480], [1000, 680], [200, 680]];
const L_AREA = 50 * 140 + 150 * 50;
/** An ellipse, 200 by 140 mm. */
const oval = (n) => [600 + 400 * Math.cos(n), 420 + 280 * Math.sin(n)];

async function photo(page, kind) {
  const bytes = await page.evaluate(
    async ([wide, high, ruler, corners]) => {
      const canvas = new OffscreenCanvas(wide, high);
      const paper = canvas.getContext("2d");
      paper.fillStyle = "#d8d2c4";
      paper.fillRect(0, 0, wide, high);
      paper.fillStyle = "#5b4636";
      paper.beginPath();
      if (corners === null) paper.ellipse(600, 420, 400, 280, 0, 0, 7);
      else for (const [x, y] of corners) paper.lineTo(x, y);
      paper.fill();
      paper.fillRect(ruler[0][0], ruler[0][1] - 6, ruler[1][0] - ruler[0][0], 12);
      const blob = await canvas.convertToBlob({ type: "image/png" });
      return [...new Uint8Array(await blob.arrayBuffer())];
    },
    [WIDE, HIGH, RULER, kind === "oval" ? null : L],
  );
  return { name: `${kind}.png`, mimeType: "image/png", buffer: Buffer.from(bytes) };
}

/** A page with the form for an own prop open at its trace. */
async function opened(options) {
  const { context, faults } = await guarded({ ...options, reducedMotion: "reduce" });
  const page = await started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await page.getByRole("button", { name: "Add a thing" }).click();
  const panel = page.getByRole("region", { name: "Add a thing" });
  await panel.getByText("Own dish or prop", { exact: true }).click();
  const form = panel.getByRole("form", { name: "Own dish or prop" });
  await form.getByRole("button", { name: "traced over a photo" }).click();
  return { context, faults, page, panel, form };
}

const choose = (form, file) => form.locator("input[type=file]").setInputFiles(file);

/** Where a place of the photo is on the screen. */
async function onScreen(form, [x, y]) {
  const shot = form.locator(".shot");
  await shot.scrollIntoViewIfNeeded();
  const box = await shot.locator("> canvas").boundingBox();
  return [box.x + (box.width * x) / WIDE, box.y + (box.height * y) / HIGH];
}
async function tap(page, form, spot) {
  await page.touchscreen.tap(...(await onScreen(form, spot)));
}
const points = (form) => form.locator(".shot circle").count();

/** The files of what is kept as one's own. */
const keptFiles = (page) =>
  page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open("overspread");
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const all = opening.result.transaction("snapshots").objectStore("snapshots").getAll();
          all.onsuccess = () => {
            opening.result.close();
            resolve(all.result.filter(({ thing }) => thing).map(({ file }) => JSON.parse(file)));
          };
        };
      }),
  );

/** Width, depth and area of an outline, mm. */
function measured(corners) {
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  const span = (all) => Math.max(...all) - Math.min(...all);
  const turn = corners.map(([x, y], n) => {
    const [u, v] = corners[(n + 1) % corners.length];
    return x * v - y * u;
  });
  return { width: span(xs), depth: span(ys), area: Math.abs(turn.reduce((a, b) => a + b)) / 2 };
}
function assertSize(corners, expected) {
  const found = measured(corners);
  for (const [what, figure] of Object.entries(expected)) {
    assert.ok(Math.abs(found[what] / figure - 1) <= 0.02, `${what}: ${found[what]} of ${figure}`);
  }
}

test("corners tapped and a known length make a prop that is kept, travels, and is resized in its shape", async () => {
  const { context, faults, page, panel, form } = await opened(phone);
  await form.getByLabel("Name").fill("hooked board");
  await choose(form, await photo(page, "L"));
  await form.getByText("Tap round the edge of the prop").waitFor();
  for (const corner of L.slice(0, 3)) await tap(page, form, corner);
  // One too many is taken back, one beside the edge removed.
  await tap(page, form, [700, 200]);
  await form.getByRole("button", { name: "Take the last point back" }).tap();
  assert.equal(await points(form), 3, "taken back");
  await tap(page, form, [800, 300]);
  await tap(page, form, [800, 300]);
  await form.getByRole("button", { name: "Remove this point" }).tap();
  assert.equal(await points(form), 3, "removed");
  for (const corner of L.slice(3)) await tap(page, form, corner);
  await form.getByText("Now choose “marks a known length”").waitFor();
  await form.getByRole("button", { name: "marks a known length" }).tap();
  for (const end of RULER) await tap(page, form, end);
  await form.getByLabel("True length between the marks, cm").fill("10");
  await form.getByText(/It is (19\.[6-9]|20(\.[0-4])?) cm wide and (13\.[7-9]|14(\.[0-3])?) cm deep/).waitFor();
  await assertAccessible(page);
  const before = await page.locator(".picture [data-key^=item-]").count();
  await form.getByRole("button", { name: "a board or tray" }).tap();
  await form.getByRole("button", { name: "Add it" }).tap();
  await panel.getByRole("list", { name: "Your shelf" }).getByRole("button", { name: "hooked board" }).first().waitFor();
  assert.equal(await page.locator(".picture [data-key^=item-]").count(), before + 1, "it stands on the table");
  assert.equal(await form.locator(".shot").count(), 0, "the photo is gone");
  const [kept] = await keptFiles(page);
  const [item] = kept.items;
  assert.equal(item.size.shape, "outline", "as its outline");
  assertSize(item.size.points, { width: 200, depth: 140, area: L_AREA });
  assert.doesNotMatch(JSON.stringify(kept), /data:|blob:/, "no photo in the file");
  await page.reload();
  await ready(page);
  await page.getByRole("button", { name: "Add a thing" }).tap();
  await panel.getByRole("list", { name: "Your shelf" }).getByRole("button", { name: "hooked board" }).first().tap();
  assert.equal(await page.locator(".picture [data-key^=item-]").count(), before + 2, "again tomorrow");
  await page.getByRole("button", { name: "Done adding" }).tap();
  await page.locator(".chosen-strip + details > summary").tap();
  const width = page.getByRole("group", { name: "Width" }).locator("output");
  const depth = page.getByRole("group", { name: "Depth" }).locator("output");
  const was = [await width.innerText(), await depth.innerText()].map(Number.parseFloat);
  await page.getByRole("group", { name: "Width" }).getByRole("button").last().tap();
  await page.waitForFunction(([node, last]) => parseFloat(node.textContent) !== last, [await width.elementHandle(), was[0]]);
  const is = [await width.innerText(), await depth.innerText()].map(Number.parseFloat);
  assert.ok(Math.abs(is[0] - was[0] - 1) < 0.11, `wider by 1 cm: ${was} ${is}`);
  assert.ok(Math.abs(is[0] / is[1] - was[0] / was[1]) < 0.03, `in its shape: ${was} ${is}`);
  await page.getByRole("button", { name: "Papers" }).tap();
  await page.getByRole("button", { name: "Make the link" }).tap();
  const link = await page.locator("input.link").inputValue();
  const other = await guarded({ ...phone, reducedMotion: "reduce" });
  const elsewhere = await other.context.newPage();
  await elsewhere.goto(link);
  await ready(elsewhere);
  await elsewhere.getByRole("button", { name: "Open a copy in the planner" }).tap();
  await elsewhere.locator(".picture [data-key^=item-]").nth(before + 1).waitFor({ state: "attached" });
  assertClean([...faults, ...other.faults]);
  await other.context.close();
  await context.close();
});

test("a stroke round the edge closes, is thinned, and can be mended by drag and keys", { skip: !long && "only in a long run" }, async () => {
  const { context, faults, page, form } = await opened(desk);
  await choose(form, await photo(page, "oval"));
  await form.getByRole("button", { name: "draws round the edge" }).click();
  await page.mouse.move(...(await onScreen(form, oval(0))));
  await page.mouse.down();
  // A little past the beginning, as a finger goes.
  for (let n = 1; n <= 123; n += 1) await page.mouse.move(...(await onScreen(form, oval((n / 120) * 2 * Math.PI))));
  await page.mouse.up();
  const count = await points(form);
  assert.ok(count >= 8 && count <= 60, `${count} points`);
  await form.getByRole("button", { name: "marks a known length" }).click();
  for (const end of RULER) await page.mouse.click(...(await onScreen(form, end)));
  await form.getByLabel("True length between the marks, cm").fill("10");
  const found = form.getByText(/^It is .* cm wide and .* cm deep\.$/);
  await found.waitFor();
  const text = await found.innerText();
  // A point dragged far over the others makes the line cross itself, which is said.
  await form.getByRole("button", { name: "sets points round the edge" }).click();
  const first = await form.locator(".shot circle").nth(Math.floor(count / 4)).boundingBox();
  await page.mouse.move(first.x + first.width / 2, first.y + first.height / 2);
  await page.mouse.down();
  await page.mouse.move(...(await onScreen(form, [600, 250])), { steps: 4 });
  await page.mouse.move(...(await onScreen(form, [590, 30])), { steps: 4 });
  await page.mouse.up();
  await page.waitForFunction(([form, text]) => !form.textContent.includes(text), [await form.elementHandle(), text]);
  const shot = form.locator(".shot");
  await shot.focus();
  await page.keyboard.press("Backspace");
  await form.getByText(text).waitFor();
  // By keys: the cross-hair goes to the middle's right, and a point is set and taken back there.
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Enter");
  assert.equal(await points(form), count + 1, "set by keys");
  await page.keyboard.press("Backspace");
  await page.keyboard.press("+");
  await form.getByRole("group", { name: "Photo enlarged" }).getByText("1.5 times").waitFor();
  await form.getByRole("button", { name: "Show more of the photo" }).click();
  await form.getByLabel("Name").fill("oval slab");
  await form.getByRole("button", { name: "Add it" }).click();
  await page.getByRole("list", { name: "Your shelf" }).getByRole("button", { name: "oval slab" }).first().waitFor();
  const [kept] = await keptFiles(page);
  assertSize(kept.items[0].size.points, { width: 200, depth: 140, area: Math.PI * 100 * 70 });
  assertClean(faults);
  await context.close();
});

test("what is no photo is said, and what makes no outline as well", async () => {
  const { context, faults, page, form } = await opened(phone);
  const said = form.getByRole("alert");
  for (const [name, buffer, words] of [
    ["empty.jpg", Buffer.alloc(0), /empty\.jpg is empty/],
    ["notes.png", Buffer.from("one platter"), /reads no picture in notes\.png/],
  ]) {
    await choose(form, { name, mimeType: "image/png", buffer });
    await said.filter({ hasText: words }).waitFor();
    assert.ok(await form.locator(".shot").isHidden(), `no photo of ${name}`);
  }
  await choose(form, await photo(page, "L"));
  await form.getByRole("button", { name: "marks a known length" }).tap();
  for (const end of RULER) await tap(page, form, end);
  await form.getByLabel("True length between the marks, cm").fill("10");
  await form.getByRole("button", { name: "sets points round the edge" }).tap();
  for (const spot of [[200, 200], [900, 600], [900, 200], [200, 600]]) await tap(page, form, spot);
  await said.filter({ hasText: "crosses itself" }).waitFor();
  await form.getByLabel("True length between the marks, cm").fill("900");
  await said.filter({ hasText: /It would be .* wide/ }).waitFor();
  await form.getByRole("button", { name: "Add it" }).tap();
  await page.getByText("The outline is not finished").waitFor();
  await assertAccessible(page);
  assertClean(faults);
  await context.close();
});

test("kept things with parts missing come with what is known, and garbage says what is amiss", async () => {
  const { context, faults, page, panel } = await opened(phone);
  const thing = (id, items) =>
    JSON.stringify({ format: "overspread-layout", version: 0, id, title: "", next_id: 9, table: { width: 1600, depth: 950 }, frame: { at: [800, 475], width: 1200 }, items });
  const bare = { id: 1, at: [800, 475], size: { shape: "rect", width: 200, depth: 100 } };
  await page.evaluate(
    (records) =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open("overspread");
        opening.onsuccess = () => {
          const writing = opening.result.transaction("snapshots", "readwrite");
          for (const record of records) writing.objectStore("snapshots").put(record);
          writing.oncomplete = () => (opening.result.close(), resolve());
          writing.onabort = () => reject(writing.error);
        };
      }),
    [
      { id: "a1", thing: true },
      { id: "a2", title: "torn record", file: "{\"format\":", changed: 1, upto: 0, thing: true },
      { id: "a3", title: "empty record", file: thing("00000000000000a3", []), changed: 2, upto: 0, thing: true },
      { id: "a4", title: "bare slab", file: thing("00000000000000a4", [{ ...bare, prop: "never-heard-of" }]), changed: 3, upto: 0, thing: true },
      { id: "a5", title: 7, file: 12, changed: "?", upto: null, thing: true },
    ],
  );
  await page.reload();
  await ready(page);
  await page.getByRole("button", { name: "Add a thing" }).tap();
  const mine = panel.getByRole("list", { name: "Your shelf" });
  const row = (name) => mine.getByRole("button", { name, exact: true }).first();
  await row("torn record").waitFor();
  assert.equal(await mine.getByRole("button", { name: "a thing without a name", exact: true }).count(), 2, "all are listed");
  const count = () => page.locator(".picture [data-key^=item-]").count();
  const before = await count();
  for (const [name, words] of [
    ["torn record", /Nothing was changed/],
    ["empty record", /holds no thing that could be put down/],
    ["a thing without a name", /Nothing was changed/],
  ]) {
    await row(name).tap();
    await page.getByRole("alert").getByText(words).first().waitFor();
    assert.equal(await count(), before, `${name}: nothing came of it`);
  }
  await row("bare slab").tap();
  assert.equal(await count(), before + 1, "what has no parts is put down all the same");
  await page.getByRole("button", { name: "Take “torn record” off your shelf" }).tap();
  await row("torn record").waitFor({ state: "detached" });
  await page.getByRole("button", { name: "Done adding" }).tap();
  await page.getByRole("button", { name: "Papers" }).tap();
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save all layouts in one file" }).tap();
  assert.ok(await (await download).path(), "and the file of all of them is written");
  assertClean(faults);
  await context.close();
});
