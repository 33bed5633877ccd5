// What goes to a printer from any place: the picture with its list, what there
// is to look at again and the cautions, on white, and nothing to press.

import assert from "node:assert/strict";
import { test } from "node:test";

import { kinds, setUp } from "./setup.mjs";
import { assertClean, phone } from "./support.mjs";

const { guarded, site, started } = setUp();

/** Whether anything that is pressed, filled in or chosen is drawn. */
const controls = (page) =>
  page.locator("button, input, select, textarea, summary, nav").evaluateAll((all) =>
    all.filter((each) => each.getClientRects().length > 0).map((each) => each.textContent),
  );

for (const [name, options] of kinds([
  ["a phone", phone],
  ["a phone in the dark", { ...phone, colorScheme: "dark" }],
])) {
  test(`every place prints the same sheet from ${name}`, async () => {
    const { context, faults } = await guarded({ ...options, reducedMotion: "reduce" });
    const page = await context.newPage();
    await page.goto(site.url);
    await page.waitForSelector("html[data-core=ready]");
    await page.locator(".first .solid").click();
    for (const place of ["Table", "Hands", "Camera & light", "Crops", "Papers"]) {
      await page.getByRole("button", { name: place, exact: true }).click();
      assert.equal(await page.locator(".printed").count(), 0, `${place}: nothing of it on the screen`);
      await page.emulateMedia({ media: "print" });
      const printed = page.locator(".printed");
      await printed.waitFor();
      assert.deepEqual(await controls(page), [], `${place}: nothing to press`);
      const text = await printed.innerText();
      assert.match(text, /^Harbour supper\s+version \d/, `${place}: title and version`);
      assert.match(text, /1 mussel pot: the hero/, `${place}: the list by number`);
      assert.match(text, /2A Hands squeeze lemon/, `${place}: hands by flag`);
      assert.match(text, /local rules and qualified people decide what is safe/, `${place}: the caution`);
      assert.ok((await printed.locator("section li").count()) > 0, `${place}: findings`);
      const names = await printed.locator('svg [data-key="crops"] text').allTextContents();
      assert.ok(names.includes("4:5 post"), `${place}: crops by name`);
      const { ground, ink, filter } = await page.evaluate(() => ({
        ground: getComputedStyle(document.documentElement).backgroundColor,
        ink: getComputedStyle(document.querySelector(".printed")).color,
        filter: getComputedStyle(document.querySelector(".printed svg")).filter,
      }));
      assert.deepEqual([ground, ink], ["rgb(255, 255, 255)", "rgb(0, 0, 0)"], `${place}: black on white`);
      assert.equal(filter, "grayscale(1)", `${place}: the picture in one ink`);
      await page.emulateMedia({ media: "screen" });
      await printed.waitFor({ state: "detached" });
      assert.ok((await controls(page)).length > 0, `${place}: everything is back`);
    }
    const file = await page.pdf({ format: "A4" });
    assert.ok(file.length > 20_000, "a page with a picture on it");
    assertClean(faults);
    await context.close();
  });
}

test("the sheet is there as soon as printing begins, as a browser may look no later", async () => {
  const { context, faults } = await guarded();
  const page = await started(context);
  await page.locator(".first .solid").click();
  const drawn = await page.evaluate(() => {
    dispatchEvent(new Event("beforeprint"));
    return document.querySelectorAll(".printed svg [data-key^=item-]").length;
  });
  assert.ok(drawn > 0, "with the things on the table");
  await page.evaluate(() => dispatchEvent(new Event("afterprint")));
  await page.locator(".printed").waitFor({ state: "detached" });
  assertClean(faults);
  await context.close();
});
