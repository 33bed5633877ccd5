// Things put together: a tap takes them all, a second one goes inside to the
// single thing, and keys and a button do the same.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

import { kinds, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, painted, phone, root } from "./support.mjs";

const { guarded, site } = setUp();

const supper = JSON.parse(await readFile(`${root}static/starters/harbour-supper.spread.json`, "utf8"));
const idOf = (name) => supper.items.find((item) => item.name === name).id;

/** Outlines drawn round what is chosen. */
const outlines = (page) =>
  page.locator(".picture path.chosen").first().evaluate((path) => (path.getAttribute("d").match(/M/g) ?? []).length);
const place = (page, id) => page.locator(`.picture [data-key="item-${id}"]`).getAttribute("transform");

/** The demonstration table, at work. */
async function atWork(options) {
  const { context, faults } = await guarded({ ...options, reducedMotion: "reduce" });
  const page = await context.newPage();
  await page.goto(site.url);
  await page.waitForSelector("html[data-core=ready]");
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Table", exact: true }).click();
  return { context, faults, page };
}

/** The loaf and the dark platter, put together. */
async function together(options) {
  const { context, faults, page } = await atWork(options);
  const things = page.getByRole("region", { name: "Things on the table" });
  await things.locator("button", { has: page.locator("span", { hasText: /^loaf$/ }) }).click();
  await page.locator(".chosen-strip + details > summary").click();
  await page.getByLabel("Moves together with").selectOption({ label: "dark platter" });
  await page.locator(".chosen-strip").getByRole("button", { name: "Done" }).click();
  await page.locator(".chosen-strip").waitFor({ state: "detached" });
  return { context, faults, page };
}

test("a second tap goes inside what moves together", async () => {
  const { context, faults, page } = await together(phone);
  const [loaf, platter] = [idOf("loaf"), idOf("dark platter")];
  await page.locator(".picture").scrollIntoViewIfNeeded();
  const box = await page.locator(`.picture [data-key="item-${loaf}"]`).boundingBox();
  const tap = async () => {
    // Slower than a double tap, which fits the picture.
    await page.waitForTimeout(400);
    await page.touchscreen.tap(box.x + box.width * 0.55, box.y + box.height * 0.55);
  };
  await tap();
  const only = page.getByRole("button", { name: "Only this one" });
  await only.waitFor();
  assert.equal(await only.getAttribute("aria-pressed"), "false", "all of it at first");
  assert.equal(await outlines(page), 2, "loaf and platter are outlined");
  await tap();
  await page.locator('button[aria-pressed="true"]', { hasText: "Only this one" }).waitFor();
  assert.equal(await page.locator(".chosen-strip h2").innerText(), "loaf", "what is under the finger");
  assert.equal(await outlines(page), 1, "the loaf alone");
  await assertAccessible(page);
  const before = [await place(page, loaf), await place(page, platter)];
  await page.locator(".chosen-strip + details > summary").click();
  await page.getByRole("button", { name: "Right 1 cm" }).click();
  const moved = [await place(page, loaf), await place(page, platter)];
  assert.ok(moved[0] !== before[0] && moved[1] === before[1], `it moves alone: ${before} to ${moved}`);
  await only.click();
  assert.equal(await outlines(page), 2, "all of it again");
  await page.getByRole("button", { name: "Right 1 cm" }).click();
  const all = [await place(page, loaf), await place(page, platter)];
  assert.ok(all[0] !== moved[0] && all[1] !== moved[1], "and moves together");
  assertClean(faults);
  await context.close();
});

test("keys go inside too, one thing after another", async () => {
  const { context, faults, page } = await together({ viewport: { width: 1280, height: 800 } });
  const things = page.getByRole("region", { name: "Things on the table" });
  await things.locator("button", { has: page.locator("span", { hasText: /^loaf$/ }) }).click();
  const heading = page.locator(".chosen-strip h2");
  await page.locator(".picture").focus();
  const seen = new Set();
  for (let n = 0; n < 4; n += 1) {
    await page.keyboard.press("Enter");
    seen.add(await heading.innerText());
    assert.equal(await outlines(page), 1, "one thing at a time");
  }
  assert.ok(seen.has("loaf") && seen.has("dark platter"), `each in turn: ${[...seen]}`);
  await page.keyboard.press("Escape");
  await heading.waitFor({ state: "detached" });
  assertClean(faults);
  await context.close();
});

test("what is chosen from the list is brought into sight, and stays where it is seen", async () => {
  const { context, faults, page } = await atWork(phone);
  const picture = page.locator(".picture");
  for (let times = 0; times < 6; times += 1) await picture.press("+");
  /** Where the middle of a thing lies in the picture, in shares of its sides. */
  const middle = (id) =>
    page.evaluate((key) => {
      const box = document.querySelector(".picture > svg").getBoundingClientRect();
      const thing = document.querySelector(`[data-key=${key}]`).getBoundingClientRect();
      return [
        (thing.x + thing.width / 2 - box.x) / box.width,
        (thing.y + thing.height / 2 - box.y) / box.height,
      ];
    }, `item-${id}`);
  const within = (shares) => shares.every((share) => share > 0 && share < 1);
  const list = page.getByRole("region", { name: "Things on the table" });
  const choose = async (name) => {
    await list.locator("button", { has: page.locator("span", { hasText: new RegExp(`^${name}$`) }) }).click();
    await page.locator(".chosen-strip").getByText(name).first().waitFor();
  };
  const far = [];
  for (const name of ["dark platter", "mussel pot", "loaf"]) {
    const before = await middle(idOf(name));
    far.push(!within(before));
    await choose(name);
    const after = await middle(idOf(name));
    assert.ok(within(after), `${name} is seen: ${after}`);
    if (within(before)) assert.deepEqual(after, before, `${name} was seen and stays`);
  }
  assert.ok(far.includes(true), "one of them was out of sight");
  assertClean(faults);
  await context.close();
});

/** What lies over the drawn middle of a thing, or that it is off the screen; nothing where it is seen. */
const over = (page, id) =>
  page.evaluate((key) => {
    const { x, y, width, height } = document.querySelector(`.picture [data-key=${key}]`).getBoundingClientRect();
    const at = [x + width / 2, y + height / 2];
    const top = document.elementFromPoint(...at);
    if (top === null) return `off the screen at ${at}`;
    // Buttons and figures lie over the drawing, within the picture.
    if (top.closest(".picture > svg") !== null || top.matches(".picture")) return "";
    return `under ${top.tagName} “${top.textContent.slice(0, 30)}” at ${at}`;
  }, `item-${id}`);

// Held across a phone has least room.
const sizes = kinds([[844, 390], [390, 844], [320, 640], [1280, 800]]);
for (const [width, height] of sizes) {
  test(`what is spoken of is seen in the picture at ${width} by ${height}`, async () => {
    const touched = width < 900;
    const { context, faults, page } = await atWork({ viewport: { width, height }, hasTouch: touched, isMobile: touched });
    const list = page.locator("ul.things button");
    const hidden = [];
    const see = async (how, name) => {
      await painted(page);
      const amiss = await over(page, idOf(name));
      if (amiss !== "") hidden.push(`${name} ${how}: ${amiss}`);
    };
    for (const name of ["mussel pot", "knife", "oil carafe"]) {
      const row = list.filter({ has: page.locator("span", { hasText: new RegExp(`^${name}$`) }) }).first();
      await (touched ? row.tap() : row.click());
      await page.locator(".chosen-strip h2", { hasText: name }).waitFor();
      await see("chosen", name);
    }
    await page.locator(".chosen-strip").getByRole("button", { name: "Done" }).click();
    const names = supper.items.map(({ name }) => name);
    const finds = page.locator(".find > button");
    let spoken = 0;
    for (let n = 0; n < (await finds.count()); n += 1) {
      const words = await finds.nth(n).innerText();
      const [about] = names.filter((name) => new RegExp(`\\b${name}`).test(words)).sort((a, b) => words.indexOf(a) - words.indexOf(b));
      if (about === undefined) continue;
      spoken += 1;
      await (touched ? finds.nth(n).tap() : finds.nth(n).click());
      await page.locator(".working").waitFor();
      await see("in an open finding", about);
      await (touched ? finds.nth(n).tap() : finds.nth(n).click());
      await page.locator(".working").waitFor({ state: "detached" });
    }
    assert.ok(spoken >= 2, `${spoken} findings speak of a thing`);
    assert.deepEqual(hidden, [], "hidden");
    assertClean(faults);
    await context.close();
  });
}
