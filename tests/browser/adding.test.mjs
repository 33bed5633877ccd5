// Adding at speed: looked through or searched, put where one looks, chosen, with
// what is picked often and one's own things first, all of it kept here.

import assert from "node:assert/strict";
import { test } from "node:test";

import { ready, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, desk, phone } from "./support.mjs";

const { guarded, started } = setUp();

/** Adding to an own table with one pot of mussels, soup and rice on it. */
async function adding(page) {
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await page.getByRole("button", { name: "Add a thing" }).click();
  return page.getByRole("region", { name: "Add a thing" });
}
const count = (page) => page.locator(".picture [data-key^=item-]").count();
const heading = (page) => page.locator(".chosen-strip h2").innerText();

test("what is found is put where one looks and chosen, food into the dish that is chosen", async () => {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  const page = await started(context);
  const panel = await adding(page);
  const before = await count(page);
  await panel.getByRole("button", { name: "plates and bowls" }).tap();
  const found = panel.getByRole("list", { name: "plates and bowls" });
  await found.locator("svg:has(*)").first().waitFor();
  const [drawn, rows] = [await found.locator("svg:has(*)").count(), await found.locator("svg").count()];
  assert.ok(drawn < rows, `only what is near is drawn: ${drawn} of ${rows}`);
  await assertAccessible(page);
  await found.getByRole("button", { name: /^pasta bowl/ }).tap();
  assert.equal(await count(page), before + 1, "it stands on the table");
  await panel.getByRole("button", { name: "All groups" }).tap();
  await panel.getByLabel("Trade name or size").fill("spaghetti");
  await panel.getByRole("button", { name: /^spaghetti/ }).tap();
  await page.getByRole("button", { name: "Done adding" }).tap();
  assert.match(await heading(page), /^spaghetti/, "what was added last is chosen");
  await page.locator(".chosen-strip + details > summary").tap();
  const on = page.getByLabel("Stands on");
  assert.equal(await on.evaluate((select) => select.selectedOptions[0].text), "pasta bowl", "it lies in the bowl");
  assertClean(faults);
  await context.close();
});

test("what was added last, favourites and own things come first, and are still there tomorrow", async () => {
  const { context, faults } = await guarded({ ...desk, reducedMotion: "reduce" });
  const page = await started(context);
  const panel = await adding(page);
  await panel.getByLabel("Trade name or size").fill("coupe");
  await panel.getByRole("button", { name: "Favourite: coupe" }).click();
  await panel.getByRole("button", { name: /^coupe/ }).click();
  await panel.getByLabel("Trade name or size").fill("");
  await panel.getByText("Own dish or prop", { exact: true }).click();
  const form = panel.getByRole("form", { name: "Own dish or prop" });
  await form.getByLabel("Name").fill("blue harbour platter");
  await form.getByRole("button", { name: "oval", exact: true }).click();
  await form.getByLabel("Keep it on your shelf").check();
  assert.equal(await form.getByLabel("Name").inputValue(), "blue harbour platter", "choosing its shape adds nothing yet");
  await form.getByRole("button", { name: "Add it" }).click();
  await panel.getByRole("list", { name: "Your shelf" }).waitFor();
  await page.reload();
  await ready(page);
  await page.getByRole("button", { name: "Add a thing" }).click();
  for (const [list, thing] of [["Your shelf", "blue harbour platter"], ["Favourites", "coupe"], ["Added last", "coupe"]]) {
    await panel.getByRole("list", { name: list }).getByRole("button", { name: thing }).first().waitFor();
  }
  const before = await count(page);
  // By keyboard from the search to the first find.
  await panel.getByLabel("Trade name or size").focus();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  assert.equal(await count(page), before + 1, "one's own comes first");
  await panel.getByRole("button", { name: "Take “blue harbour platter” off your shelf" }).click();
  await panel.getByRole("list", { name: "Your shelf" }).waitFor({ state: "detached" });
  assertClean(faults);
  await context.close();
});

test("own things go along in the file of all layouts and come back from it", async () => {
  const { context, faults } = await guarded({ ...desk, reducedMotion: "reduce" });
  const page = await started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await page.getByRole("region", { name: "Things on the table" }).getByRole("button", { name: "mussel pot" }).first().click();
  await page.locator(".chosen-strip + details > summary").click();
  await page.getByRole("button", { name: "Keep it on your shelf" }).click();
  await page.getByText("“mussel pot” is on your shelf.").first().waitFor();
  await page.getByRole("button", { name: "Papers" }).click();
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save all layouts in one file" }).click();
  const file = await (await download).path();
  const other = await guarded({ ...desk, reducedMotion: "reduce" });
  const elsewhere = await started(other.context);
  await elsewhere.locator(".first .solid").click();
  await elsewhere.getByRole("button", { name: "Papers" }).click();
  await elsewhere.getByLabel("Open a file").setInputFiles({
    name: "layouts.json",
    mimeType: "application/json",
    buffer: await (await import("node:fs/promises")).readFile(file),
  });
  await elsewhere.getByRole("button", { name: "Table", exact: true }).click();
  await elsewhere.getByRole("button", { name: "Add a thing" }).click();
  const before = await count(elsewhere);
  await elsewhere.getByRole("list", { name: "Your shelf" }).getByRole("button", { name: "mussel pot" }).first().click();
  assert.equal(await count(elsewhere), before + 2, "the pot and the mussels in it");
  assertClean([...faults, ...other.faults]);
  await context.close();
  await other.context.close();
});

test("where the browser keeps nothing, it says so and the thing stays on the table", async () => {
  const { context } = await guarded({ ...phone, reducedMotion: "reduce" });
  const page = await started(context);
  const panel = await adding(page);
  await page.evaluate(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException("no room", "QuotaExceededError");
    };
    Storage.prototype.setItem = () => {
      throw new DOMException("denied", "SecurityError");
    };
  });
  await panel.getByLabel("Trade name or size").fill("coupe");
  await panel.getByRole("button", { name: "Favourite: coupe" }).tap();
  await page.getByRole("alert").getByText(/keeps no favourites \(denied\)/).waitFor();
  await panel.getByRole("button", { name: /^coupe/ }).tap();
  await page.getByRole("button", { name: "Done adding" }).tap();
  await page.locator(".chosen-strip + details > summary").tap();
  await page.getByRole("button", { name: "Keep it on your shelf" }).tap();
  await page.getByRole("alert").getByText(/Your shelf is as it was: this device did not keep the change \(no room\)/).waitFor();
  assert.equal(await heading(page), "coupe", "it still stands on the table");
  await context.close();
});

test("a surface is chosen by a piece of it", async () => {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  const page = await started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await page.getByText("Board, floor and frame", { exact: true }).click();
  await page.getByText(/^Surface: /).click();
  const all = page.getByRole("list", { name: "Surfaces" });
  assert.ok((await all.getByRole("button").count()) >= 25, "every surface");
  // Findings said above them may still come, and push them out of sight.
  await page.waitForFunction(() => {
    const first = document.querySelector(".surfaces .swatches svg");
    first.scrollIntoView({ block: "nearest" });
    return first.childElementCount > 0;
  });
  await all.getByRole("button", { name: "blue tiles" }).tap();
  await page.getByText("Surface: blue tiles").waitFor();
  await assertAccessible(page);
  await page.getByRole("button", { name: "Undo" }).tap();
  await page.getByText("Surface: charcoal-stained board").waitFor();
  assertClean(faults);
  await context.close();
});
