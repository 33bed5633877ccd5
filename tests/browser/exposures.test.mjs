// Exposures on the page: each shown as the table stands in it, added, timed,
// put in order and taken out, and things moved, changed or away in one alone.

import assert from "node:assert/strict";
import { test } from "node:test";

import { kinds, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, desk, painted, phone } from "./support.mjs";

const at = setUp();

/** Opens the supper at the hands; gives the page and its steps. */
async function hands(options) {
  const { context, faults } = await at.guarded({ ...options, reducedMotion: "reduce" });
  const page = await at.started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Hands", exact: true }).click();
  const steps = page.getByRole("group", { name: "Exposure shown" });
  await steps.waitFor();
  return { context, faults, page, steps };
}

/** Where a thing is drawn once what was pressed is, as its transform; null when it is not. */
async function placed(page, key) {
  await painted(page);
  return page.evaluate(
    (key) => document.querySelector(`.picture [data-key="${key}"]`)?.getAttribute("transform") ?? null,
    key,
  );
}

for (const [name, options] of kinds([
  ["phone", phone],
  ["desk in the dark", { ...desk, colorScheme: "dark" }],
])) {
  test(`things are changed in one exposure alone on a ${name}`, async () => {
    const { context, faults, page, steps } = await hands(options);
    await steps.getByRole("button", { name: "1", exact: true }).click();
    const loaf = await page.evaluate(() => {
      const at = document.querySelector('.picture [data-key="item-3"]').getBoundingClientRect();
      return [at.x + at.width / 2, at.y + at.height / 2];
    });
    const key = "item-3";
    const set = await placed(page, key);
    await page.mouse.click(...loaf);
    const strip = page.locator(".chosen-strip");
    const one = strip.getByRole("group", { name: /in this exposure$/ });
    await one.waitFor();
    await one.getByRole("button", { name: "not there" }).click();
    assert.equal(await placed(page, key), null, "it is not drawn");
    await assertAccessible(page);
    await one.getByRole("button", { name: "as set" }).click();
    assert.equal(await placed(page, key), set, "where it is set");
    await strip.getByRole("button", { name: "Right 1 cm" }).click();
    assert.notEqual(await placed(page, key), set, "moved");
    const unlike = page.getByRole("group", { name: "Not as it is set" });
    assert.match(await unlike.innerText(), /moved/, "told of");
    await steps.getByRole("button", { name: "all together" }).click();
    assert.equal(await placed(page, key), set, "where it is set, all together");
    await steps.getByRole("button", { name: "1", exact: true }).click();
    assert.notEqual(await placed(page, key), set, "moved in this exposure");
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    assert.equal(await placed(page, key), set, "taken back");
    assertClean(faults);
    await context.close();
  });
}

test("a thing dragged while an exposure is shown moves in it alone", async () => {
  const { context, faults, page, steps } = await hands(desk);
  await steps.getByRole("button", { name: /^clean/ }).first().click();
  const set = await placed(page, "item-3");
  const [x, y] = await page.evaluate(() => {
    const at = document.querySelector('.picture [data-key="item-3"]').getBoundingClientRect();
    return [at.x + at.width / 2, at.y + at.height / 2];
  });
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 30, y + 14, { steps: 4 });
  await page.mouse.up();
  assert.notEqual(await placed(page, "item-3"), set, "moved");
  await page.getByText(/moved in (the )?clean exposure/).waitFor();
  await page.getByRole("button", { name: "Table", exact: true }).click();
  assert.equal(await placed(page, "item-3"), set, "the table is as it is set");
  assertClean(faults);
  await context.close();
});

test("exposures are added, timed, put in order and taken out", async () => {
  const { context, faults, page, steps } = await hands(phone);
  const names = () => steps.getByRole("button").allInnerTexts();
  const before = await names();
  await page.getByLabel("Add an exposure").selectOption("glare-free");
  const added = steps.getByRole("button", { name: "glare-free" });
  assert.equal(await added.getAttribute("aria-pressed"), "true", "it is shown");
  const takes = page.getByRole("group", { name: "Takes" });
  assert.equal(await takes.locator("output").innerText(), "3 min");
  await takes.getByRole("button", { name: "A minute more" }).click();
  assert.equal(await takes.locator("output").innerText(), "4 min");
  const order = await names();
  await page.getByRole("button", { name: "Shoot it earlier" }).click();
  assert.notDeepEqual(await names(), order, "earlier");
  await assertAccessible(page);
  await page.getByRole("button", { name: "Take it out", exact: true }).click();
  assert.deepEqual(await names(), before, "as before");
  await steps.getByRole("button", { name: "2", exact: true }).click();
  await page.getByRole("button", { name: "Take it out with its 2 hands" }).click();
  assert.equal((await names()).length, before.length - 1, "gone with its hands");
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  assert.deepEqual(await names(), before, "back");
  assertClean(faults);
  await context.close();
});

test("what each exposure adds is shown by line and number, and for one alone", async () => {
  const { context, faults, page, steps } = await hands(desk);
  const marks = page.locator('.picture [data-key="marks"]');
  const show = page.getByRole("group", { name: "Show", exact: true });
  const dashes = () =>
    marks.locator("path").evaluateAll((all) => {
      const each = all.map((path) => path.getAttribute("stroke-dasharray") ?? "");
      return new Set(each.filter((dash) => dash !== "")).size;
    });
  await show.getByRole("button", { name: "what each exposure adds" }).click();
  for (const number of ["1", "2", "3"]) await marks.getByText(number, { exact: true }).first().waitFor();
  assert.ok((await dashes()) >= 4, "three arms and their shadows, each in a line of its own");
  await steps.getByRole("button", { name: "2", exact: true }).click();
  await marks.getByText("1", { exact: true }).first().waitFor({ state: "detached" });
  await marks.getByText("2", { exact: true }).first().waitFor();
  await assertAccessible(page);
  await show.getByRole("button", { name: "nothing" }).click();
  await marks.getByText("2", { exact: true }).first().waitFor({ state: "detached" });
  assertClean(faults);
  await context.close();
});
