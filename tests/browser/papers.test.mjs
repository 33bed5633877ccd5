// Papers to print, and lists that change the picture.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

import { kinds, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, desk, phone } from "./support.mjs";

const at = setUp();

for (const [name, options] of kinds([
  ["phone", phone],
  ["desk", desk],
])) {
  test(`lists change the picture and every paper is made on a ${name}`, async () => {
    const { context, faults } = await at.guarded({ ...options, reducedMotion: "reduce" });
    const page = await at.started(context);
    await page.locator(".first .solid").click();
    await page.getByRole("button", { name: "Papers", exact: true }).click();

    // A list: one tumbler more stands on the table, and one fewer again.
    await page.getByText("Props to pull", { exact: true }).click();
    const list = page.getByRole("list", { name: "Props to pull" });
    const row = list.getByRole("listitem").filter({ hasText: "wine tumbler" });
    await row.locator("summary").click();
    const things = () => page.locator('[data-key^="item-"]').count();
    const before = await things();
    await row.getByRole("button", { name: "wine tumbler: one more in the picture" }).click();
    await row.getByText("× 4").waitFor();
    assert.equal(await things(), before + 1, "it is in the picture");
    await row.getByRole("button", { name: "hire" }).click();
    await row.getByLabel("Lives at").fill("box 4");
    await row.getByLabel("Lives at").blur();
    await row.getByLabel("pulled").check();
    await row.getByRole("button", { name: "wine tumbler: one fewer in the picture" }).click();
    await row.getByText("× 3").waitFor();
    assert.equal(await things(), before, "it is gone");
    assert.ok(await row.getByLabel("pulled").isChecked(), "ticks stay with their row");

    // The papers: the list is as the page has it, and each is drawn.
    const papers = page.getByRole("region", { name: "Papers to print" });
    for (const paper of ["Layout for approval", "Set sheet", "Food list", "Hand model release"]) {
      await papers.getByRole("button", { name: paper, exact: true }).click();
      const first = papers.getByRole("img", { name: `${paper}, page 1 of` }).first();
      await first.waitFor();
      const wide = await first.evaluate((image) => image.decode().then(() => image.naturalWidth));
      assert.ok(wide > 700, `${paper}: ${wide} pixels wide`);
    }
    await papers.getByRole("button", { name: "Prop pull list" }).click();
    const pull = papers.getByRole("img", { name: "Prop pull list, page 1 of 1" });
    await pull.waitFor();
    /** The first page of the paper in view, as it is saved. */
    const saved = async () => {
      const file = page.waitForEvent("download");
      await papers.getByRole("button", { name: "Save as drawings (SVG)" }).click();
      return readFile(await (await file).path(), "utf8");
    };
    const text = await saved();
    for (const wanted of ["wine tumbler", "hire", "box 4", 'width="297.00mm"']) {
      assert.ok(text.includes(wanted), wanted);
    }
    await papers.getByRole("button", { name: "US Letter" }).click();
    await papers.getByRole("img", { name: /^Prop pull list/ }).first().waitFor();
    assert.ok((await saved()).includes('width="279.40mm"'), "on the other paper");
    await page.evaluate(() => (window.print = () => (window.asked = true)));
    await papers.getByRole("button", { name: "Print this paper" }).click();
    await page.waitForFunction(() => window.asked === true);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    const box = /MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/.exec(pdf.toString("latin1"));
    assert.ok(box !== null, "a page");
    const [across, down] = [Number(box[1]), Number(box[2])];
    assert.ok(Math.abs(across - 792) < 1.5 && Math.abs(down - 612) < 1.5, `${across} × ${down} pt`);
    await assertAccessible(page);
    assertClean(faults);
    await context.close();
  });
}
