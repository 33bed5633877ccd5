// Many things in one act: places laid, food in a chosen dish, tools laid on it,
// rows, swaps, and what is strewn along a path.

import assert from "node:assert/strict";
import { test } from "node:test";

import { kinds, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, desk, phone } from "./support.mjs";

const { site, guarded, started } = setUp();

const size = { shape: "disc", diameter: 220, rim: 18 };
const table = {
  format: "overspread-layout",
  version: 0,
  id: "0000000000000077",
  next_id: 6,
  next_number: 3,
  title: "A bowl and a spoon",
  table: { width: 2200, depth: 1100 },
  frame: { at: [1100, 550], width: 1500 },
  items: [
    { id: 1, number: 1, name: "soup bowl", prop: "soup-bowl", at: [1100, 550], size, height: 60 },
    {
      id: 2, number: 2, name: "spoon", prop: "spoon", at: [1100, 650], height: 12,
      size: { shape: "rect", width: 42, depth: 200 },
    },
  ],
};

/** The page at work on the table above. */
async function at(options, laid = table) {
  const { context, faults } = await guarded({ ...options, reducedMotion: "reduce" }, site.url);
  const page = await started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Papers", exact: true }).click();
  const buffer = Buffer.from(JSON.stringify(laid));
  await page
    .getByLabel("Open a file")
    .setInputFiles({ name: "bowl.json", mimeType: "application/json", buffer });
  await page.getByRole("heading", { name: laid.title }).waitFor();
  await page.getByRole("button", { name: "Table", exact: true }).click();
  const done = (words) => page.locator(".row .quiet", { hasText: words }).waitFor();
  const choose = (name) =>
    page.getByRole("region", { name: "Things on the table" }).getByRole("button", { name }).first().click();
  const opened = (name) => page.locator("summary", { hasText: name }).click();
  const press = (name) => page.getByRole("button", { name }).click();
  const things = () => page.locator('.picture [data-key^="item-"]').count();
  return { context, faults, page, done, choose, opened, press, things };
}

for (const [name, options] of kinds([["phone", phone], ["desk", desk]])) {
  test(`six places are laid in one act on a ${name}, and taken back in one`, async () => {
    const { context, faults, page, done, opened, press, things } = await at(options);
    const before = await things();
    await opened("Lay places");
    await press("Lay 6 places");
    await done("6 places laid");
    assert.equal(await things(), before + 24, "plate, fork, knife and glass at each");
    await assertAccessible(page);
    await press("Undo");
    await done("taken back");
    assert.equal(await things(), before, "all gone");
    assertClean(faults);
    await context.close();
  });
}

test("food goes into the chosen dish, a spoon is laid on it and taken off", async () => {
  const { context, faults, page, done, choose, press } = await at(phone);
  await choose(/^1\s*soup bowl/);
  await press("Add a thing");
  await page.getByLabel("Trade name or size").fill("clear soup");
  await page.getByRole("button", { name: /^clear soup/ }).first().click();
  await done("clear soup added");
  await press("Done adding");
  await choose(/spoon/);
  await press("Lay it on the soup bowl");
  await done("spoon laid on it");
  await press("Take it off");
  await done("spoon taken off");
  assertClean(faults);
  await context.close();
});

test("a runner is laid over what its edge crosses, and out from over one place", async () => {
  const runner = { id: 3, name: "runner", at: [1100, 400], size: [2200, 300] };
  const laid = { ...table, linens: [runner], items: [...table.items] };
  laid.items.push({ ...table.items[0], id: 4, name: "plate", prop: "small-plate", at: [700, 600] });
  const { context, faults, page, done, choose, press } = await at(phone, laid);
  const order = () =>
    page.locator(".picture [data-key]").evaluateAll((all) =>
      all.map((each) => each.dataset.key).filter((key) => /^(item|linen)-/.test(key)),
    );
  const below = ["linen-3", "item-1", "item-2", "item-4"];
  assert.deepEqual(await order(), below, "cloth below all");
  await choose(/^runner/);
  await press("Lay it over 2 things at its edge");
  await done("runner laid over what was on it");
  assert.deepEqual(await order(), ["item-1", "item-4", "linen-3", "item-2"], "not over the spoon");
  await press("Done");
  await choose(/^1\s*plate/);
  await press("On top of the runner");
  await done("runner laid under it");
  assert.deepEqual(await order(), ["item-1", "linen-3", "item-2", "item-4"], "still over the bowl");
  await assertAccessible(page);
  await press("Under the runner");
  await done("runner laid over what was on it");
  await press("Undo");
  await press("Undo");
  await press("Undo");
  assert.deepEqual(await order(), below, "all of it can be taken back");
  assertClean(faults);
  await context.close();
});

test("a row, a swap of all, and crumbs along a brushed path", async () => {
  const { context, faults, page, done, choose, opened, press, things } = await at(desk);
  await choose(/^1\s*soup bowl/);
  await opened("Repeat, line up or swap");
  await press("Lay 2 more in a row");
  await done("soup bowl repeated");
  await page.getByLabel("Swap for").selectOption("noodle-bowl");
  await press("Swap all like it");
  await done("3 things swapped for the noodle bowl");
  await assertAccessible(page);
  const before = await things();
  await opened("Strew along a path");
  await page.getByLabel("What is strewn").selectOption("crumbs");
  await press("Brush it on the picture");
  await page.locator(".picture").scrollIntoViewIfNeeded();
  const box = await page.locator(".picture").boundingBox();
  const to = (x, y) => page.mouse.move(box.x + box.width * x, box.y + box.height * y);
  await to(0.3, 0.7);
  await page.mouse.down();
  for (let step = 1; step <= 8; step += 1) await to(0.3 + step * 0.05, 0.7 + (step % 2) * 0.02);
  await page.mouse.up();
  await done("crumbs strewn");
  const more = (await things()) - before;
  assert.ok(more >= 2 && more <= 8, `a few scatters along it: ${more}`);
  assertClean(faults);
  await context.close();
});
