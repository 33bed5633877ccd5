// Versions of a table: kept, compared, gone back to, deleted and put back, in
// the backup file too; and two layouts beside each other under one window.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

import { choose, loaf, saved } from "./layouts.mjs";
import { ready, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, desk, phone } from "./support.mjs";

const { guarded, started } = setUp();

const go = (page, place) => page.getByRole("button", { name: place, exact: true }).click();
const part = (page) => page.getByRole("region", { name: "Versions" });
const listed = (page) => part(page).locator("ul.shelf li p span").allTextContents();

/** At the papers of the demonstration table. */
async function papers(options = phone) {
  const { context, faults } = await guarded({ ...options, reducedMotion: "reduce" });
  const page = await started(context);
  await page.locator(".first .solid").click();
  await go(page, "Papers");
  return { context, faults, page };
}

async function keep(page, name) {
  await part(page).getByLabel("Name of this version").fill(name);
  await part(page).getByRole("button", { name: "Keep this as a version" }).click();
  await part(page).getByText(`“${name}” is kept.`).waitFor();
}

/** Moves the loaf to the left by so many centimetres. */
async function shift(page, times) {
  await choose(page);
  for (let n = 0; n < times; n += 1) await page.keyboard.press("ArrowLeft");
  await go(page, "Papers");
}

const windows = (page) =>
  page.locator(".beside .picture > svg").evaluateAll((all) => all.map((svg) => svg.getAttribute("viewBox")));

/** How long the lines are that mark a change, in each picture. */
const marks = (page) =>
  page.locator(".beside .picks .line").evaluateAll((all) => all.map((line) => (line.getAttribute("d") ?? "").length));

test("a phone keeps a version over a reload and compares it with the table as it is", async () => {
  const { context, faults, page } = await papers();
  await keep(page, "first idea");
  await shift(page, 12);
  await saved(page);
  await page.reload();
  await ready(page);
  await go(page, "Papers");
  await part(page).getByRole("button", { name: "Compare “first idea”" }).tap();
  const change = page.locator(".beside .changes button");
  await change.first().waitFor();
  assert.deepEqual(await change.allTextContents(), ["3 loaf moved 12 cm to the left."]);
  assert.deepEqual(await marks(page), [0, 0], "nothing is marked unasked");
  await change.tap();
  assert.equal(await change.getAttribute("aria-pressed"), "true");
  // In both pictures, by the outline and from where to where.
  await page.waitForFunction(() => {
    const lines = [...document.querySelectorAll(".beside .picks .line")];
    return lines.length === 2 && lines.every((line) => line.getAttribute("d").length > 100);
  });
  await page.getByRole("group", { name: "Scores" }).getByText(/^Balance \d+, then \d+/).waitFor();
  await page.getByRole("region", { name: "Findings" }).getByRole("listitem").first().waitFor();
  await assertAccessible(page);
  await page.getByRole("button", { name: "Back to the table" }).tap();
  await part(page).waitFor();
  assertClean(faults);
  await context.close();
});

test("what moves or enlarges one picture does so to both: two fingers, wheel and keys", async () => {
  const { context, faults, page } = await papers(phone);
  await keep(page, "first idea");
  await shift(page, 3);
  await part(page).getByRole("button", { name: "Compare “first idea”" }).tap();
  await page.locator(".beside .changes button").first().waitFor();
  const alike = async (why) => {
    const all = await windows(page);
    assert.equal(all.length, 4);
    assert.equal(new Set(all).size, 1, why);
    return all[0];
  };
  const whole = await alike("at rest");
  const touch = await context.newCDPSession(page);
  const fingers = (type, touchPoints) => touch.send("Input.dispatchTouchEvent", { type, touchPoints });
  const box = await page.locator(".beside .picture").first().boundingBox();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await fingers("touchStart", [{ x: x - 20, y, id: 0 }, { x: x + 20, y, id: 1 }]);
  await fingers("touchMove", [{ x: x - 60, y, id: 0 }, { x: x + 60, y, id: 1 }]);
  await fingers("touchEnd", []);
  const enlarged = await alike("after two fingers");
  assert.ok(Number(enlarged.split(" ")[2]) < 0.5 * Number(whole.split(" ")[2]), "three times as large");
  const second = page.locator(".beside .picture").nth(1);
  await second.focus();
  await page.keyboard.press("ArrowRight");
  assert.notEqual(await alike("after a key"), enlarged);
  await page.keyboard.press("0");
  assert.equal(await alike("whole again"), whole);
  await page.keyboard.press("+");
  assert.notEqual(await alike("enlarged by key"), whole);
  await second.getByRole("button", { name: "Whole picture" }).tap();
  assert.equal(await alike("whole by the button"), whole);
  assertClean(faults);
  await context.close();
});

test("a wheel over one picture of a desk enlarges both", async () => {
  const { context, faults, page } = await papers(desk);
  await keep(page, "first idea");
  await part(page).getByRole("button", { name: "Compare “first idea”" }).click();
  await page.getByText("Nothing changed.").waitFor();
  const [whole] = await windows(page);
  await page.locator(".beside .picture").nth(1).hover();
  await page.mouse.wheel(0, -300);
  await page.waitForFunction((was) => document.querySelector(".beside svg").getAttribute("viewBox") !== was, whole);
  assert.equal(new Set(await windows(page)).size, 1);
  await assertAccessible(page);
  assertClean(faults);
  await context.close();
});

test("going back to a version is one step, which can be undone", async () => {
  const { context, faults, page } = await papers();
  const before = await loaf(page);
  await keep(page, "first idea");
  await shift(page, 5);
  const after = await loaf(page);
  assert.notEqual(after, before);
  await part(page).getByRole("button", { name: "Go back to “first idea”" }).tap();
  await page.getByText("back to “first idea”").first().waitFor();
  assert.equal(await loaf(page), before, "as it was kept");
  await page.getByRole("button", { name: "Undo", exact: true }).tap();
  assert.equal(await loaf(page), after, "and again as it was before");
  assertClean(faults);
  await context.close();
});

test("versions are deleted and put back, and go along in the file of all layouts", async () => {
  const { context, faults, page } = await papers();
  await part(page).getByRole("button", { name: "Keep this as a version" }).tap();
  await part(page).getByText("“version 1” is kept.").waitFor();
  await keep(page, "second idea");
  assert.deepEqual(await listed(page), ["second idea", "version 1"]);
  await part(page).getByRole("button", { name: "Delete “version 1”" }).tap();
  await part(page).getByText("“version 1” is deleted.").waitFor();
  assert.deepEqual(await listed(page), ["second idea"]);
  const file = async () => {
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save all layouts in one file" }).tap();
    return readFile(await (await download).path());
  };
  const one = JSON.parse(await file());
  assert.deepEqual(one.versions.map(({ name }) => name), ["second idea"]);
  await part(page).getByRole("button", { name: "Put it back" }).tap();
  await part(page).locator("li").nth(1).waitFor();
  const saved = await file();
  await context.close();
  assertClean(faults);

  const other = await papers();
  const back = async (text) => {
    await other.page
      .getByLabel("Open a file")
      .setInputFiles({ name: "all.json", mimeType: "application/json", buffer: Buffer.from(text) });
    await other.page.getByText("layout").first().waitFor();
  };
  // What is no version is passed over, and a name too long is cut.
  const all = JSON.parse(saved);
  all.versions.push(7, null, { name: 3, made: 4, file: {} }, { name: "x", made: -1, file: {} });
  all.versions.push({ ...all.versions[0], name: "long ".repeat(90), made: 1 });
  await back(JSON.stringify(all));
  await go(other.page, "Table");
  await go(other.page, "Papers");
  await part(other.page).locator("li").nth(2).waitFor();
  const names = await listed(other.page);
  assert.deepEqual(names.slice(0, 2), ["second idea", "version 1"]);
  assert.equal(names.length, 3);
  assert.ok(names[2].length <= 80, `${names[2].length} letters`);
  await other.context.close();
});

test("two layouts of the shelf are shown as tables of their own", async () => {
  const { context, faults, page } = await papers();
  await page.getByRole("button", { name: "Lay a new table" }).tap();
  await page.getByRole("button", { name: "Citrus breakfast" }).tap();
  await page.getByRole("heading", { name: "Citrus breakfast" }).waitFor();
  await go(page, "Papers");
  await part(page).getByText("Compare any two").tap();
  await part(page).getByLabel("First").selectOption({ label: "Harbour supper" });
  await part(page).getByRole("button", { name: "Put them beside each other" }).tap();
  await page.getByText("These are two tables of their own.").waitFor();
  await page.getByText("Only in Harbour supper").waitFor();
  await page.getByText("Only in the table as it is now").waitFor();
  await assertAccessible(page);
  assertClean(faults);
  await context.close();
});

test("a client is sent two versions, flicks through both and replies to the one in view", async () => {
  const { context, faults, page } = await papers();
  await keep(page, "loaf at the right");
  await shift(page, 12);
  const send = page.getByRole("region", { name: "Link for the client" });
  await send.getByLabel("With another version to choose from").selectOption({ label: "loaf at the right" });
  await send.getByLabel("What this one is called").fill("loaf at the left");
  await send.getByRole("button", { name: "Make the link" }).tap();
  const link = await send.locator("input.link").inputValue();
  const payload = link.split("#")[1];
  assert.ok(payload.length < 1_300, `${payload.length} characters`);
  await context.close();
  assertClean(faults);

  const other = await guarded({ ...phone, reducedMotion: "reduce" });
  const client = await started(other.context, link);
  const choose = client.getByRole("group", { name: "Two to choose from" });
  const [left, right] = ["left", "right"].map((side) =>
    choose.getByRole("button", { name: `loaf at the ${side}` }),
  );
  const loaves = () =>
    client
      .locator(".flick svg")
      .first()
      .locator("[data-key=item-3]")
      .evaluate((node) => Math.round(node.getBoundingClientRect().x));
  const first = await loaves();
  assert.equal(await left.getAttribute("aria-pressed"), "true", "the one that was sent comes first");
  const changed = client.getByRole("region", { name: "What changed" }).getByRole("listitem");
  await changed.first().waitFor();
  assert.deepEqual(await changed.allTextContents(), ["3 loaf moved 12 cm to the right."]);
  await right.tap();
  assert.equal(await right.getAttribute("aria-pressed"), "true");
  assert.notEqual(await loaves(), first, "the other picture");
  await assertAccessible(client);
  await client.getByRole("button", { name: "Reply" }).tap();
  const text = await client.locator("textarea.sent").inputValue();
  assert.ok(text.includes("Of the two: loaf at the right."), text);
  await left.tap();
  assert.equal(await loaves(), first, "and back");
  // One letter of it changed opens nothing of it.
  const broken = `${payload.slice(0, -9)}${payload.at(-9) === "A" ? "B" : "A"}${payload.slice(-8)}`;
  await client.evaluate((hash) => (location.hash = hash), broken);
  await client.getByRole("alert").waitFor();
  assertClean(other.faults);
  await other.context.close();
});
