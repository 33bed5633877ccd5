// A newer planner beside an older page: what is edited while a newer page waits
// and after it was accepted is there in it, what is in hand ends first, and what
// a newer planner sends is shown, said and not kept.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

import { begin, choose, loaf, saved, steps } from "./layouts.mjs";
import { toucher } from "./measure.mjs";
import { renewable } from "./newer.mjs";
import { ready, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, keptForOffline, phone } from "./support.mjs";

const { guarded, site, started } = setUp();
const still = { ...phone, reducedMotion: "reduce" };

test("edits go over into a newer page, which waits for the finger", async () => {
  await renewable(async (url, publish) => {
    const { context, faults } = await guarded(still, url);
    const page = await begin(await started(context, url));
    await keptForOffline(page);
    await page.evaluate(steps);
    const places = [await loaf(page)];
    await publish();
    await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
    const accept = page.locator("[data-act=update]");
    await accept.waitFor();
    await assertAccessible(page);
    await choose(page);
    await page.keyboard.press("ArrowRight");
    places.push(await loaf(page));

    const touch = toucher(await context.newCDPSession(page));
    const box = await page.locator(".picture [data-key=item-3]").boundingBox();
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await touch("touchStart", x, y);
    for (let step = 1; step <= 8; step += 1) await touch("touchMove", x - 4 * step, y - step);
    await page.locator(".lens").waitFor();
    const loaded = page.waitForEvent("load");
    await page.evaluate(() => {
      globalThis.renewed = new Promise((resolve) => navigator.serviceWorker.addEventListener("controllerchange", resolve));
      document.querySelector("[data-act=update]").click();
    });
    await page.evaluate(() => globalThis.renewed);
    for (let step = 9; step <= 12; step += 1) await touch("touchMove", x - 4 * step, y - step);
    assert.notEqual(await page.title(), "Newer", "not under the finger");
    await touch("touchEnd");
    places.push(await loaf(page));
    await loaded;
    await ready(page);
    assert.equal(await page.title(), "Newer");
    assert.equal(new Set(places).size, 3, "both moved it");
    for (const place of [...places].reverse()) {
      assert.equal(await loaf(page), place);
      await page.getByRole("button", { name: "Undo", exact: true }).click();
    }
    assertClean(faults);
    await context.close();
  });
});

test("a link of a newer planner is shown, said and not kept; one in a newer version is refused", async () => {
  const { context, faults } = await guarded(still);
  const page = await begin(await started(context));
  const link = (name) => readFile(new URL(`../hostile/links/${name}.link`, import.meta.url), "utf8");
  const count = () =>
    page.evaluate(async () => {
      const open = indexedDB.open("overspread");
      await new Promise((resolve) => (open.onsuccess = resolve));
      const all = open.result.transaction("snapshots").objectStore("snapshots").count();
      await new Promise((resolve) => (all.onsuccess = resolve));
      open.result.close();
      return all.result;
    });
  const kept = await count();
  await page.evaluate((hash) => (location.hash = hash), await link("ok-unknown-section"));
  await page.getByText("A newer planner made this link.").waitFor();
  await page.getByRole("button", { name: "Reply" }).waitFor();
  assert.equal(await page.getByRole("button", { name: "Open a copy in the planner" }).count(), 0);
  assert.equal(await count(), kept, "nothing of it is kept");
  // One of this planner can be.
  await page.evaluate((hash) => (location.hash = hash), await link("ok-sound"));
  await page.getByRole("button", { name: "Open a copy in the planner" }).waitFor();
  assert.equal(await page.getByText("A newer planner made this link.").count(), 0);
  await page.goto(site.url);
  await ready(page);
  await page.evaluate((hash) => (location.hash = hash), await link("version-newer"));
  await page.getByRole("alert").getByText("open it with a newer planner").waitFor();
  await page.getByRole("heading", { name: "Harbour supper" }).waitFor();
  await saved(page);
  assertClean(faults);
  await context.close();
});
