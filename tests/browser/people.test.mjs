// People and their hands: what a hand does and holds, whose it is, a place at
// the table tapped and dragged, and an arm that follows its fingertips.

import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { test } from "node:test";

import { kinds, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, desk, painted, phone } from "./support.mjs";

const at = setUp();

/** Opens the hands' place with the first hand chosen. */
async function hands(options) {
  const { context, faults } = await at.guarded({ ...options, reducedMotion: "reduce" });
  const page = await at.started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Hands", exact: true }).click();
  const list = page.getByRole("list", { name: "Hands in the picture" });
  await list.getByRole("button").first().click();
  return { page, context, faults, strip: page.locator(".chosen-strip") };
}

/** What the group of this key is drawn with once the picture rests, as a short sum. */
const drawn = async (page, key) => {
  await painted(page);
  const paths = await page
    .locator(`.picture [data-key="${key}"]`)
    .evaluate((g) => [...g.querySelectorAll("path")].map((path) => path.getAttribute("d")).join(" "));
  return createHash("sha256").update(paths).digest("hex");
};

/** The middle of a group on the screen. */
const middle = (page, key) =>
  page.locator(`.picture [data-key="${key}"]`).evaluate((g) => {
    const { x, y, width, height } = g.getBoundingClientRect();
    return [x + width / 2, y + height / 2];
  });

for (const [name, options] of kinds([
  ["phone", phone],
  ["desk in the dark", { ...desk, colorScheme: "dark" }],
])) {
  test(`a hand does something else, for someone new, on a ${name}`, async () => {
    const { page, context, faults, strip } = await hands(options);
    const before = await drawn(page, "hand-33");
    await strip.getByRole("group", { name: "Does" }).getByRole("button", { name: "lift it" }).click();
    assert.notEqual(await drawn(page, "hand-33"), before, "another pose");
    assert.notEqual(await strip.getByLabel("In the hand").inputValue(), "0", "it holds something");
    await strip.getByLabel("In the hand").selectOption("0");
    await strip.getByRole("button", { name: /higher$/ }).click();
    await strip.getByRole("group", { name: "Whose hand" }).getByRole("button", { name: "someone new" }).click();
    await strip.locator("summary").click();
    await strip.getByText("Who B is").waitFor();
    await strip.getByLabel("How tall").selectOption({ label: "short woman (5th percentile) 152.5 cm" });
    await strip.getByText(/Taller than about 5 of 100 women and 0 of 100 men/).waitFor();
    await strip.getByRole("group", { name: "Skin" }).getByRole("button", { name: "Tan skin" }).click();
    await strip.getByRole("group", { name: "Nails" }).getByRole("button", { name: "red", exact: true }).click();
    await strip.getByRole("group", { name: "Writes with" }).getByRole("button", { name: "left hand" }).click();
    await assertAccessible(page);
    assertClean(faults);
    await context.close();
  });
}

test("an arm follows its fingertips, and back again", async () => {
  const { page, context, faults } = await hands(desk);
  // The outline of what is chosen is that of the hand, which a finger takes.
  const box = await page.locator(".picture path.chosen").first().boundingBox();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const before = await drawn(page, "hand-33");
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 20, y + 12, { steps: 4 });
  await page.waitForTimeout(100);
  const held = await drawn(page, "hand-33");
  assert.notEqual(held, before, "the arm is solved anew while it is dragged");
  const lifted = page.locator('.picture [data-key="hand-33"][data-lifted]');
  assert.equal(await lifted.count(), 1, "it is in hand");
  await page.keyboard.press("Escape");
  assert.equal(await drawn(page, "hand-33"), before, "back where it was");
  await page.mouse.up();
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 20, y + 12, { steps: 4 });
  await page.mouse.up();
  assert.notEqual(await drawn(page, "hand-33"), before, "it stays there");
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  assert.equal(await drawn(page, "hand-33"), before, "taken back");
  // By keyboard.
  await page.locator(".picture").focus();
  await page.keyboard.press("ArrowRight");
  assert.notEqual(await drawn(page, "hand-33"), before, "nudged");
  assertClean(faults);
  await context.close();
});

test("a place at the table is tapped for the chosen hand, and dragged along", async () => {
  const { page, context, faults } = await hands(desk);
  const before = await drawn(page, "hand-33");
  const rooms = await page
    .locator('.picture [data-key^="room-"]')
    .evaluateAll((all) => all.map((g) => g.dataset.key));
  assert.ok(rooms.length > 0, "there is room for one more");
  const seen = await page.locator(".picture").boundingBox();
  let tapped = false;
  for (const room of rooms) {
    const [x, y] = await middle(page, room);
    const inside = x > seen.x && x < seen.x + seen.width && y > seen.y && y < seen.y + seen.height;
    if (!inside) continue;
    await page.mouse.click(x, y);
    tapped = true;
    break;
  }
  assert.ok(tapped, "one of them is seen");
  assert.notEqual(await drawn(page, "hand-33"), before, "the arm comes from there");
  const place = await page
    .locator('.picture [data-key^="place-"]')
    .last()
    .evaluate((g) => g.dataset.key);
  const [x, y] = await middle(page, place);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 60, y, { steps: 4 });
  await page.mouse.up();
  const [after] = await middle(page, place);
  assert.ok(Math.abs(after - x) > 30, `moved along the edge: ${x} to ${after}`);
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await painted(page);
  assert.equal(await page.locator('.picture [data-key^="place-"]').count(), 0, "not at the table");
  assertClean(faults);
  await context.close();
});
