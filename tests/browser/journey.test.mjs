// The first visit by touch: cure the first table, lay an own spread with one
// pair of hands, send it as a picture and as a link, come back without a network.

import assert from "node:assert/strict";
import { test } from "node:test";

import { ready, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, keptForOffline, painted, phone } from "./support.mjs";

/** A script of touches longer than this is too much work for one spread. */
const MOST_TOUCHES = 60;

const { guarded, started } = setUp();

test("from the first sentence to a link that opens elsewhere", async () => {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  const page = await started(context);
  let touches = 0;
  const touch = async (locator) => {
    touches += 1;
    await locator.tap();
  };
  await assertAccessible(page);

  const sentence = await page.locator(".big").innerText();
  assert.match(sentence, /loses \d+% of its outline/, "one sentence with its figure");
  assert.equal(await page.locator(".first button").count(), 1, "one button");
  await touch(page.locator(".solid"));
  await page.locator(".was").waitFor();
  const figures = (await page.locator(".was").innerText()).match(/\d+/g).map(Number);
  assert.ok(figures[0] < figures[1], `the figure falls: ${figures}`);
  await page.locator(".find .big").waitFor();
  assert.match(await page.locator(".find .big").innerText(), /their own pot/, "the second sentence is the next thing's");
  await assertAccessible(page);
  await touch(page.getByRole("button", { name: "Undo" }));
  await page.locator(".first .solid").waitFor();
  assert.equal(await page.locator(".big").innerText(), sentence, "taken back, the cure is offered as at first");
  await touch(page.locator(".solid"));
  await page.locator(".find .big").waitFor();

  await touch(page.getByRole("button", { name: "Now yours" }));
  for (const dish of ["pot of mussels", "seared aubergine", "dark-crusted loaf", "black olives", "rice"]) {
    await touch(page.getByRole("button", { name: dish, exact: true }));
  }
  await touch(page.getByRole("button", { name: "Lay the table" }));
  await page.getByRole("region", { name: "Findings" }).waitFor();
  await assertAccessible(page);

  await touch(page.getByRole("button", { name: "Hands", exact: true }));
  await touch(page.getByRole("button", { name: "squeeze lemon" }));
  assert.equal(await page.locator(".picture [data-key^=hand-]").count(), 2, "one pair of hands is drawn");

  const drawnHands = () => page.locator(".picture [data-key^=hand-]").count();
  const steps = page.getByRole("group", { name: "Exposure shown" });
  for (const [step, count] of [["no hands", 0], ["1", 2], ["all together", 2]]) {
    await touch(steps.getByRole("button", { name: step, exact: true }));
    await painted(page);
    assert.equal(await drawnHands(), count, `hands drawn at "${step}"`);
  }

  await touch(page.getByRole("button", { name: "Crops", exact: true }));
  for (const crop of ["4:5 post", "9:16 upright"]) {
    await touch(page.getByRole("group", { name: "Add a crop" }).getByRole("button", { name: crop }));
  }
  assert.equal(await page.locator(".keeps button").count(), 2, "what each crop keeps is drawn");
  await assertAccessible(page);

  await touch(page.getByRole("button", { name: "Papers" }));
  const download = page.waitForEvent("download");
  await touch(page.getByRole("button", { name: "Picture for a chat" }));
  assert.match((await download).suggestedFilename(), /\.png$/, "a picture of pixels");
  await touch(page.getByRole("button", { name: "Make the link" }));
  const link = await page.locator("input.link").inputValue();
  assert.ok(touches <= MOST_TOUCHES, `${touches} touches`);
  await assertAccessible(page);

  const other = await guarded();
  const client = await other.context.newPage();
  // On a slow network the picture is there before the planner.
  const planner = new Promise((come) => (other.come = come));
  await other.context.route(/\/core-[^/]*\.wasm$/, (route) => planner.then(() => route.continue()));
  await client.goto(link, { waitUntil: "commit" });
  const early = client.locator("#early").getByRole("img", { name: "My table" });
  await early.waitFor();
  assert.ok((await early.evaluate((picture) => picture.naturalWidth)) > 300, "it is drawn");
  await assertAccessible(client);
  other.come();
  await client.getByRole("button", { name: "Reply" }).waitFor();
  assert.equal(await early.count(), 0, "the planner has taken over");
  assert.equal(await client.getByRole("navigation").count(), 0, "no editing controls");
  assert.equal(await client.locator(".flick figure").count(), 3, "the picture and its two crops");
  await client.getByRole("button", { name: "Reply" }).tap();
  assert.match(await client.locator(".sent").inputValue(), /^My table, version 1 · .+\nAnswer: yes\nhttp.+#.+$/);
  await assertAccessible(client);
  assertClean(other.faults);
  await other.context.close();

  await keptForOffline(page);
  await context.setOffline(true);
  await page.reload();
  await ready(page);
  await page.getByRole("heading", { name: "My table" }).waitFor();
  assert.equal(await page.locator(".picture [data-key^=hand-]").count(), 2, "the hands are still there");
  assertClean(faults);
  await context.close();
});
