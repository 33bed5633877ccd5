// Every screen of the page as a person meets it: each place on a phone and at a
// desk, light and dark, is worked without a fault of accessibility; what a
// finger touches is large enough; nothing runs off the side; and what goes
// wrong is said, with what was kept.

import assert from "node:assert/strict";
import { test } from "node:test";

import { cramped } from "./judges.mjs";
import { kinds, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, assertNoForeignRequests, desk, painted, phone } from "./support.mjs";

const { guarded, site, started } = setUp();

/** At work on the first table. */
async function working(context) {
  const page = await started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await page.getByRole("region", { name: "Findings" }).waitFor();
  return page;
}

async function sound(page, where) {
  await assertAccessible(page);
  assert.deepEqual(await cramped(page), [], where);
}

const unfold = (page) =>
  page.locator("details").evaluateAll((all) => all.forEach((each) => (each.open = true)));

const narrow = { ...phone, viewport: { width: 320, height: 640 } };
const screens = [
  ["narrow phone", narrow],
  ["desk in the dark", { ...desk, colorScheme: "dark" }],
  ["phone", phone],
  ["phone in the dark", { ...phone, colorScheme: "dark" }],
  ["desk", desk],
];
for (const [name, options] of kinds(screens)) {
  test(`every place on a ${name}`, async () => {
    const { context, faults } = await guarded({ ...options, reducedMotion: "reduce" });
    const page = await working(context);
    for (const place of ["Table", "Hands", "Camera & light", "Crops", "Papers"]) {
      await page.getByRole("button", { name: place, exact: true }).click();
      await painted(page);
      await unfold(page);
      await sound(page, place);
    }
    await page.getByRole("button", { name: "Make the link" }).click();
    await page.locator("input.link").waitFor();
    await sound(page, "the link");
    await page.getByRole("button", { name: "Table", exact: true }).click();
    await page.getByRole("button", { name: "Add a thing" }).click();
    await unfold(page);
    await sound(page, "adding");
    await page.getByRole("button", { name: "fruit", exact: true }).click();
    await sound(page, "a group of things to add");
    await page.getByRole("button", { name: "Done adding" }).click();
    for (const thing of ["mussel pot", "oat runner", "left hand"]) {
      await page.getByRole("region", { name: "Things on the table" }).getByRole("button", { name: thing }).first().click();
      await page.locator(".chosen-strip").waitFor();
      await unfold(page);
      await sound(page, thing);
    }
    const opens = page.locator(".find > button").first();
    await opens.click();
    await page.getByRole("region", { name: "How this is worked out" }).waitFor();
    await sound(page, "the working of a finding");
    assertClean(faults);
    await context.close();
  });

  test(`the client's view on a ${name}`, async () => {
    const { context, faults } = await guarded({ ...options, reducedMotion: "reduce" });
    const page = await working(context);
    await page.getByRole("button", { name: "Papers", exact: true }).click();
    await page.getByRole("button", { name: "Make the link" }).click();
    const link = await page.locator("input.link").inputValue();
    const client = await context.newPage();
    await client.goto(link);
    await client.getByRole("button", { name: "Reply" }).waitFor();
    await sound(client, "the client's view");
    assert.match(await client.locator(".head").innerText(), /version \d · \d+ \w+/, "version and date");
    const lines = await client.getByRole("list", { name: "What is in the picture" }).innerText();
    assert.match(lines, /mussel pot: the hero/, "the hero is named");
    assert.match(lines, /2A\s+Hands squeeze lemon over the mussel pot/, "hands by flag");
    const crops = await client.locator(".flick figcaption").allInnerTexts();
    assert.deepEqual(
      crops,
      ["whole picture", "double page", "4:5 post", "9:16 upright", "16:9 banner"],
      "every crop to flick through",
    );
    const heights = await client.locator(".flick svg").evaluateAll((all) =>
      all.map((each) => each.getBoundingClientRect().height / innerHeight),
    );
    assert.ok(heights.every((high) => high > 0.1 && high < 0.6), `crops are seen whole: ${heights}`);
    await client.getByRole("button", { name: "Reply" }).click();
    await client.getByRole("button", { name: "yes with changes" }).click();
    await client.getByRole("button", { name: /^Remark on\s*2\s*dark/ }).click();
    await client.getByLabel("Your remark").fill("less oil");
    await client.getByRole("button", { name: "Done" }).click();
    const sent = await client.locator(".sent").inputValue();
    assert.match(sent, /^Harbour supper, version \d · .+\nAnswer: yes with changes\n1\. 2, dark platter: less oil\nhttp.+#.+$/);
    await sound(client, "the reply");
    await client.getByRole("button", { name: "Open a copy in the planner" }).click();
    await client.getByRole("navigation").waitFor();
    assertClean(faults);
    await context.close();
  });
}

test("a drag shows what it changes, clear of the finger, and settles", async () => {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  const page = await working(context);
  const session = await context.newCDPSession(page);
  const touch = (type, x, y) =>
    session.send("Input.dispatchTouchEvent", { type, touchPoints: x === undefined ? [] : [{ x, y }] });
  const pot = page.locator("[data-key^=item-]").filter({ has: page.locator("path") });
  const box = await page.locator(".picture").boundingBox();
  // The hero's tag stands on its rim; just inside it is the pot.
  const tag = await page.locator("[data-key=tags] circle").first().boundingBox();
  const [x, y] = [tag.x + tag.width, tag.y - 6];
  assert.ok((await pot.count()) > 3, "things are drawn");
  await touch("touchStart", x, y);
  for (let step = 1; step <= 20; step += 1) await touch("touchMove", x - 3 * step, y + step);
  await page.getByRole("region", { name: "What this move changes" }).waitFor();
  await page.locator(".scores .up, .scores .down").first().waitFor();
  const lens = await page.locator(".lens").boundingBox();
  const finger = [x - 60, y + 20];
  const hidden =
    finger[0] > lens.x - 20 && finger[0] < lens.x + lens.width + 20 && finger[1] < lens.y + lens.height;
  assert.ok(!hidden, "the figure stands clear of the finger");
  assert.ok(lens.x >= box.x && lens.x + lens.width <= box.x + box.width, "and within the picture");
  await touch("touchEnd");
  await page.getByRole("region", { name: "Findings" }).waitFor();
  await page.getByRole("button", { name: "Undo" }).tap();
  assertClean(faults);
  await context.close();
});

test("a device that keeps nothing says so, and the table is still laid", async () => {
  const { context } = await guarded();
  await context.addInitScript(() => {
    const refuse = () => {
      throw new DOMException("denied", "SecurityError");
    };
    Object.defineProperty(globalThis, "indexedDB", { value: { open: refuse } });
    Object.defineProperty(Storage.prototype, "getItem", { value: refuse });
    Object.defineProperty(Storage.prototype, "setItem", { value: refuse });
  });
  const page = await started(context);
  await page.getByRole("alert").getByText("refused to save").waitFor();
  await sound(page, "a device that keeps nothing");
  await page.getByRole("button", { name: "Understood" }).tap();
  await page.locator(".first .solid").tap();
  await page.locator(".was").waitFor();
  await context.close();
});

test("a planner that cannot be fetched says so", async () => {
  const { context, faults } = await guarded();
  await context.route(/core-.*\.wasm$/, (route) => route.abort());
  const page = await context.newPage();
  await page.goto(site.url);
  await page.getByText("The planner did not start").waitFor();
  await sound(page, "a planner that did not start");
  assertNoForeignRequests(faults);
  await context.close();
});

test("a second tab only shows a layout that another is working on", async () => {
  const { context, faults } = await guarded();
  const first = await working(context);
  await first.getByText("saved on this phone").waitFor();
  const second = await started(context);
  await second.getByText("Another tab is working on this layout").waitFor();
  await sound(second, "the second tab");
  assertClean(faults);
  await context.close();
});

test("a file of a newer planner is shown and neither changed nor kept", async () => {
  const { context, faults } = await guarded();
  const page = await working(context);
  await page.getByRole("button", { name: "Papers", exact: true }).tap();
  const text = JSON.stringify({
    format: "overspread-layout", version: 9, id: "0000000000000099", title: "From later", next_id: 9, next_number: 9,
    table: { width: 1200, depth: 900 }, frame: { at: [600, 450], width: 1000 },
    items: [{ id: 1, number: 1, name: "bowl", prop: "small-bowl", at: [600, 450], size: { shape: "disc", diameter: 140 } }],
  });
  await page.getByLabel("Open a file").setInputFiles({
    name: "later.json", mimeType: "application/json", buffer: Buffer.from(text),
  });
  await page.getByText("A newer planner made this file. Here it is only shown").waitFor();
  assert.equal(await page.locator(".head h1").innerText(), "From later");
  await page.getByRole("button", { name: "Table", exact: true }).tap();
  await page.locator("summary", { hasText: "Board" }).first().tap();
  await page.getByRole("button", { name: /wider/i }).first().tap();
  await page.getByText("Nothing was changed; the newer page can.").waitFor();
  await sound(page, "a newer file");
  await page.reload();
  await page.locator(".head h1").waitFor();
  assert.equal(await page.locator(".head h1").innerText(), "Harbour supper", "nothing of it was kept");
  assertClean(faults);
  await context.close();
});

test("a file with faults names each of them and changes nothing", async () => {
  const { context, faults } = await guarded();
  const page = await working(context);
  await page.getByRole("button", { name: "Papers", exact: true }).tap();
  const text = JSON.stringify({ format: "overspread-layout", version: 1, id: "zz", table: { width: -4 } });
  await page.getByLabel("Open a file").setInputFiles({
    name: "broken.json", mimeType: "application/json", buffer: Buffer.from(text),
  });
  const alert = page.getByRole("alert");
  await alert.waitFor();
  assert.ok((await alert.locator("li").count()) >= 2, await alert.innerText());
  assert.equal(await page.locator(".head h1").innerText(), "Harbour supper", "the open layout stays");
  await sound(page, "the list of faults");
  assertClean(faults);
  await context.close();
});

test("layouts kept here are renamed, deleted and put back", async () => {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  const page = await working(context);
  await page.getByRole("button", { name: "Papers", exact: true }).tap();
  await page.getByRole("button", { name: "Lay a new table" }).tap();
  await page.getByRole("button", { name: "From my dishes" }).tap();
  for (const dish of ["seared aubergine", "dark-crusted loaf", "rice"]) {
    await page.getByRole("button", { name: dish, exact: true }).tap();
  }
  await page.getByRole("button", { name: "Lay the table" }).tap();
  await page.getByRole("region", { name: "Findings" }).waitFor();
  await page.getByRole("button", { name: "Papers", exact: true }).tap();
  await page.getByRole("button", { name: "Rename “Harbour supper”" }).tap();
  await page.locator(".shelf input").fill("Late supper");
  await page.locator(".shelf input").press("Enter");
  await page.getByRole("button", { name: "Delete “Late supper”" }).tap();
  await page.getByText("“Late supper” is deleted.").waitFor();
  await page.getByRole("button", { name: "Put it back" }).tap();
  await page.locator(".kept", { hasText: "Late supper" }).tap();
  await page.getByRole("heading", { name: "Late supper" }).waitFor();
  assertClean(faults);
  await context.close();
});

/** Has the core fall the next time something is moved, as a fault in it would. */
function falling() {
  const real = WebAssembly.instantiate;
  WebAssembly.instantiate = async (module, imports) => {
    const instance = await real(module, imports);
    const fall = (...given) => {
      if (!globalThis.fall) return instance.exports.planner_move_by(...given);
      globalThis.fall = false;
      throw new WebAssembly.RuntimeError("unreachable");
    };
    return { instance: { exports: { ...instance.exports, planner_move_by: fall } }, module };
  };
}

test("after a fall of the core the layout is as it was and goes on", async () => {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  await context.addInitScript(falling);
  const page = await working(context);
  const list = page.getByRole("region", { name: "Things on the table" });
  await list.getByRole("button", { name: "mussel pot" }).first().tap();
  const picture = page.locator(".picture");
  const drawn = () => page.locator("[data-key^=item-]").count();
  const before = await drawn();
  await page.evaluate(() => (globalThis.fall = true));
  await picture.press("ArrowRight");
  await page.getByRole("alert").getByText("stopped the planner").waitFor();
  assert.equal(await drawn(), before, "everything is drawn again");
  await page.getByRole("button", { name: "Understood" }).tap();
  await picture.press("ArrowRight");
  await page.getByText("mussel pot moved").first().waitFor();
  await page.getByRole("button", { name: "Undo" }).tap();
  assertClean(faults);
  await context.close();
});

test("a dish and a crop of one's own take the shape asked for", async () => {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  const page = await working(context);
  await page.getByRole("button", { name: "Add a thing" }).tap();
  await unfold(page);
  const dish = page.getByRole("form", { name: "Own dish or prop" });
  await dish.getByRole("button", { name: "oval", exact: true }).tap();
  await dish.getByLabel("Name").fill("gratin dish");
  await dish.getByLabel("Across, cm").fill("30");
  await dish.getByLabel("Down, cm").fill("20");
  await dish.getByRole("button", { name: "Add it" }).tap();
  await page.getByText("gratin dish added").first().waitFor();

  await page.getByRole("button", { name: "Crops", exact: true }).tap();
  await painted(page);
  await unfold(page);
  const ratio = page.getByRole("form", { name: "Own ratio" });
  await ratio.getByLabel("Wide").fill("50");
  await ratio.getByLabel("High").fill("1");
  await ratio.getByRole("button", { name: "Add it" }).tap();
  await page.getByRole("alert").getByText("at most 20 to 1").waitFor();
  await page.getByRole("button", { name: "Understood" }).tap();
  await ratio.getByLabel("Wide").fill("5");
  await ratio.getByLabel("High").fill("2");
  await ratio.getByRole("button", { name: "Add it" }).tap();
  await page.getByText("5:2 added").first().waitFor();
  assertClean(faults);
  await context.close();
});

test("figures read without hands are not taken for those with them", async () => {
  const { context, faults } = await guarded({ ...desk, reducedMotion: "reduce" });
  const page = await started(context);
  await page.locator(".first .solid").click();
  await page.locator(".was").waitFor();
  await page.getByRole("button", { name: "Hands", exact: true }).click();
  const scores = page.locator(".scores");
  await scores.waitFor();
  await page.getByText("reading the table…").waitFor({ state: "detached" });
  const first = await scores.innerText();
  await page.waitForTimeout(1_000);
  assert.equal(await scores.innerText(), first, "the first figures stay");
  assertClean(faults);
  await context.close();
});
