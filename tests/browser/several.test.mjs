// Several things picked at once: by a loop drawn with a finger, by taps, by
// checkboxes and by keys; what is done to all of them is one step each, what is
// locked stays, and everything can be taken back.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

import { toucher } from "./measure.mjs";
import { kinds, long, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, desk, phone } from "./support.mjs";

const { guarded, started } = setUp();

const plate = { shape: "disc", diameter: 160, rim: 6 };
const thing = (id, name, prop, at, more = {}) =>
  ({ id, number: id, name, prop, at, size: plate, height: 30, ...more });
const small = {
  format: "overspread-layout", version: 0, id: "0000000000000078", next_id: 20, next_number: 20,
  title: "Six and a napkin",
  table: { width: 1600, depth: 1000 },
  frame: { at: [800, 500], width: 1400 },
  groups: [{ id: 15, name: "" }],
  linens: [{ id: 1, kind: "napkin", name: "napkin", at: [1300, 300], size: [220, 220], turn: 0, colour: "#aabbcc" }],
  items: [
    thing(2, "first bowl", "soup-bowl", [400, 300]),
    thing(3, "second bowl", "soup-bowl", [640, 320]),
    thing(4, "third bowl", "soup-bowl", [520, 520], { locked: true }),
    thing(5, "left plate", "small-plate", [1000, 600], { group: 15 }),
    thing(6, "right plate", "small-plate", [1200, 600], { group: 15 }),
    thing(7, "soup", "soup", [400, 300], { on: 2, size: { shape: "disc", diameter: 130, rim: 0 } }),
  ],
};

/** 200 bowls and crumbs strewn over all of the table. */
const large = {
  ...small,
  id: "0000000000000079", title: "Two hundred", frame: { at: [800, 500], width: 1900 }, next_id: 400, next_number: 400, groups: [], linens: [],
  items: [
    ...Array.from({ length: 200 }, (_, n) =>
      thing(n + 1, `bowl ${n + 1}`, "dip-bowl", [60 + (n % 20) * 78, 60 + Math.floor(n / 20) * 98], {
        size: { shape: "disc", diameter: 60, rim: 3 },
      })),
    thing(300, "crumbs", "crumbs", [800, 500], { size: { shape: "oval", width: 1500, depth: 900, rim: 0 } }),
  ],
};

async function at(options, table = small) {
  const { context, faults } = await guarded({ ...options, reducedMotion: "reduce" });
  const page = await started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Papers", exact: true }).click();
  const buffer = Buffer.from(JSON.stringify(table));
  await page
    .getByLabel("Open a file")
    .setInputFiles({ name: "table.json", mimeType: "application/json", buffer });
  await page.getByRole("heading", { name: table.title }).waitFor();
  await page.getByRole("button", { name: "Table", exact: true }).click();
  const strip = page.getByRole("region", { name: "What is picked" });
  return {
    context, faults, page, strip,
    press: (name) => page.getByRole("button", { name, exact: true }).click(),
    says: (words) => strip.getByRole("heading", { name: words, exact: true }).waitFor(),
    done: (words) => page.locator(".row .quiet").getByText(words, { exact: true }).waitFor(),
    box: (name) => page.getByRole("checkbox", { name: `Pick the ${name}`, exact: true }),
    places: () => page.locator('.picture [data-key^="item-"]').evaluateAll((all) =>
      Object.fromEntries(all.map((each) => [each.dataset.key, each.getAttribute("transform")]))),
  };
}

/** The layout as a file, byte for byte. */
async function file(page) {
  await page.getByRole("button", { name: "Papers", exact: true }).click();
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save as a file" }).click();
  const bytes = await readFile(await (await download).path(), "utf8");
  await page.getByRole("button", { name: "Table", exact: true }).click();
  return bytes;
}

/** Where a place on the table, mm, is on the screen. */
async function screen(page, x, y) {
  return page.locator(".picture > svg").first().evaluate(
    (svg, [x, y]) => {
      const { a, d, e, f } = svg.getScreenCTM();
      return [a * x + e, d * y + f];
    },
    [x, y],
  );
}

/** Goes with a finger through places on the table. */
async function finger(context, page, places) {
  const touch = toucher(await context.newCDPSession(page));
  const [first, ...rest] = await Promise.all(places.map(([x, y]) => screen(page, x, y)));
  await touch("touchStart", ...first);
  for (const place of rest) await touch("touchMove", ...place);
  return () => touch("touchEnd");
}
const ring = (x, y, radius, from = 0) =>
  Array.from({ length: 33 }, (_, n) => {
    const turn = from + (n / 32) * 6.1;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
  });

for (const [name, options] of kinds([["phone", phone], ["phone in the dark", { ...phone, colorScheme: "dark" }]])) {
  test(`a loop drawn with a finger picks what lies in it, and taps more, on a ${name}`, async () => {
    const { context, faults, page, says, press, done, places, strip } = await at(options);
    const before = await file(page);
    await press("Pick several");
    await says("Nothing picked yet");
    await page.evaluate(() => {
      globalThis.made = 0;
      const nodes = (changes) => changes.forEach((change) => (globalThis.made += change.addedNodes.length));
      new MutationObserver(nodes).observe(document.querySelector(".picture > svg"), { childList: true, subtree: true });
    });
    const lift = await finger(context, page, ring(520, 380, 300));
    const drawn = await page.locator(".picture .trail").last().getAttribute("points");
    assert.ok(drawn.split(" ").length > 40, `drawn as it goes: ${drawn}`);
    assert.equal(await page.evaluate(() => globalThis.made), 0, "nothing is drawn anew");
    await lift();
    await says("3 things picked");
    await strip.getByText("1 of them is locked and stays as it is.").waitFor();
    assert.equal(await page.locator(".picture .trail").last().getAttribute("points"), "", "the line is gone");
    await assertAccessible(page);
    await page.touchscreen.tap(...(await screen(page, 1000, 600)));
    await says("5 things picked");
    await page.touchscreen.tap(...(await screen(page, 640, 320)));
    await says("4 things picked");
    const was = await places();
    await (await finger(context, page, [[400, 300], [420, 340], [440, 380], [451, 397]]))();
    await done("3 things moved; what is locked stays as it is");
    const now = await places();
    const moved = Object.keys(was).filter((key) => was[key] !== now[key]);
    assert.deepEqual(moved.sort(), ["item-2", "item-5", "item-6", "item-7"], "all but what is locked");
    await press("Undo");
    assert.deepEqual(await places(), was, "one step");
    assert.ok((await file(page)) === before, "to the byte");
    assertClean(faults);
    await context.close();
  });
}

test("loops that hold nothing pick nothing, and a loop crossing itself holds both its halves", async () => {
  const { context, faults, page, says, press } = await at(phone);
  await press("Pick several");
  for (const path of [
    [[1550, 900], [1560, 960]],
    [[700, 800], [760, 860], [820, 800]],
    ring(800, 850, 60),
  ]) {
    await (await finger(context, page, path))();
    await says("Nothing picked yet");
  }
  const eight = [...ring(400, 300, 130), ...ring(1300, 300, 200, Math.PI).reverse()];
  await (await finger(context, page, eight))();
  await says("2 things picked");
  await press("Done");
  await page.getByRole("button", { name: "Pick several" }).waitFor();
  assertClean(faults);
  await context.close();
});

test("the same without a drag: checkboxes, keys held with a click, all, and none", async () => {
  const { context, faults, page, says, strip, box, places, done } = await at(desk);
  const before = await file(page);
  await box("soup").check();
  await says("1 thing picked");
  assert.ok(await box("first bowl").isChecked(), "the bowl for its soup");
  await box("left plate").check();
  await says("3 things picked");
  await assertAccessible(page);
  await box("right plate").uncheck();
  await says("1 thing picked");
  const click = async (x, y, key) => {
    await page.keyboard.down(key);
    await page.mouse.click(...(await screen(page, x, y)));
    await page.keyboard.up(key);
  };
  await click(640, 320, "Shift");
  await says("2 things picked");
  await click(1300, 300, "Control");
  await says("3 things picked");
  await page.locator(".picture").focus();
  const was = await places();
  for (const [key, words] of [["ArrowRight", "moved"], ["Shift+ArrowDown", "moved"], ["]", "turned"]]) {
    await page.keyboard.press(key);
    await done(`3 things ${words}`);
    assert.notDeepEqual(await places(), was, key);
    await page.keyboard.press("Control+z");
    await done(`taken back: 3 things ${words}`);
    assert.deepEqual(await places(), was, "one step");
  }
  await page.keyboard.press("Control+a");
  await says("6 things picked");
  await page.keyboard.press("Delete");
  await done("5 things taken away; what is locked stays as it is");
  await says("1 thing picked");
  await page.keyboard.press("Control+z");
  await page.keyboard.press("Escape");
  await strip.waitFor({ state: "detached" });
  assert.ok((await file(page)) === before, "to the byte");
  assertClean(faults);
  await context.close();
});

test("every act on everything of a full table, taken back to the same bytes", { skip: !long && "only in a long run" }, async () => {
  const { context, faults, page, says, press, done } = await at(phone, large);
  const before = await file(page);
  await press("Pick several");
  await (await finger(context, page, [[-20, -20], [800, -30], [1620, -20], [1620, 1020], [-20, 1020]]))();
  await says("201 things picked");
  await assertAccessible(page);
  const steps = [
    ["Right 1 cm", "201 things moved"],
    ["Lock them in place", "201 things locked"],
    ["Unlock them", "201 things unlocked"],
    ["Put them together", "put together"],
    ["Turn 5° clockwise", "201 things turned"],
    ["Take groups apart", "taken apart"],
    ["Side by side in line", "201 things in line"],
    ["Equal gaps", "equal gaps between 201 things"],
    ["Repeat them", "201 things laid again"],
    ["Take them away", "201 things taken away"],
  ];
  await page.locator("summary", { hasText: "Line up" }).click();
  for (const [name, words] of steps) {
    await press(name);
    await done(words);
  }
  await page.getByRole("alert").waitFor({ state: "detached" });
  for (const [, words] of steps.reverse()) {
    await press("Undo");
    await done(`taken back: ${words}`);
  }
  assert.ok(await page.getByRole("button", { name: "Undo" }).isDisabled(), "one step each");
  assert.ok((await file(page)) === before, "to the byte");
  assertClean(faults);
  await context.close();
});
