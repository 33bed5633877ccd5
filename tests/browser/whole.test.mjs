// The whole job by touch on a phone, from the layout to the log: it is sent, the
// client answers in a chat app's own browser, the answer is seen to, props come
// off the shelf, every paper is made, and the day is gone through step by step.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

import { PAPERS } from "./papers.mjs";
import { ready, setUp } from "./setup.mjs";
import { assertClean, phone } from "./support.mjs";

const { guarded, started } = setUp();

const phoned = () => guarded({ ...phone, reducedMotion: "reduce", acceptDownloads: true });
const pressed = (page, name) => page.getByRole("button", { name, exact: true });

/** The client looks, remarks on the hero, says yes with changes, and sends the text back. */
async function answered(link) {
  const { context, faults } = await phoned();
  const client = await context.newPage();
  await client.addInitScript(() => {
    for (const gone of ["share", "canShare", "clipboard", "serviceWorker"]) {
      Object.defineProperty(navigator, gone, { value: undefined });
    }
  });
  await client.goto(link);
  await ready(client);
  const hero = await client.locator(".flick [data-key=item-1]").first().boundingBox();
  await client.touchscreen.tap(hero.x + hero.width / 2, hero.y + hero.height / 2);
  await client.getByLabel("Your remark").fill("more lemon");
  await pressed(client, "Done").tap();
  const text = await client.locator("textarea.sent").inputValue();
  assertClean(faults);
  await context.close();
  return text.split("\n").at(-1);
}

test("from the layout to the client, the shelf, the papers and the day", async () => {
  const { context, faults } = await phoned();
  const page = await started(context);
  await page.locator(".first .solid").tap();
  await pressed(page, "Papers").tap();
  await pressed(page, "Make the link").tap();
  const answer = await answered(await page.locator("input.link").inputValue());
  await page.evaluate((address) => (location.href = address), answer);
  const came = page.getByRole("region", { name: "An answer" });
  await came.getByText("more lemon").waitFor();
  await pressed(came, "Put it on the table").tap();
  const remarks = page.getByRole("region", { name: "Remarks" });
  await remarks.getByLabel("Remark 1 is seen to").tap();

  await pressed(page, "Papers").tap();
  await page.getByText("Props to pull", { exact: true }).tap();
  const row = page.getByRole("list", { name: "Props to pull" }).getByRole("listitem").filter({ hasText: "wine tumbler" });
  await row.locator("summary").tap();
  await pressed(row, "I own 3 of these").tap();
  await pressed(row, "wine tumbler: one more in the picture").tap();
  await row.getByText("On your shelf: have 3 of 4").waitFor();
  await row.getByLabel("pulled").tap();

  const papers = page.getByRole("region", { name: "Papers to print" });
  for (const name of PAPERS) {
    await pressed(papers, name).tap();
    const first = papers.getByRole("img", { name: `${name}, page 1 of` });
    await first.waitFor();
    const file = page.waitForEvent("download");
    await pressed(papers, "Save as PDF").tap();
    const bytes = await readFile(await (await file).path(), "latin1");
    const pages = await papers.getByRole("img").count();
    assert.match(bytes, new RegExp(`^%PDF-[^]*/Count ${pages}\\b`), `${name}: ${pages} pages`);
  }

  await pressed(page, "Begin the shoot-day steps").tap();
  const step = page.getByRole("region").filter({ has: page.getByRole("heading", { level: 1 }) });
  let shot = 0;
  for (;;) {
    for (const box of await step.getByRole("checkbox").all()) await box.tap();
    const more = pressed(page, "One frame more");
    if ((await more.count()) > 0) {
      await more.tap();
      shot += 1;
    }
    const next = pressed(page, "Next");
    if ((await next.count()) === 0) break;
    await next.tap();
  }
  assert.ok(shot >= 5, `${shot} exposures shot`);
  await pressed(page, "Finish").tap();
  await pressed(papers, "Exposure log").tap();
  const drawn = page.waitForEvent("download");
  await pressed(papers, "Save as drawings (SVG)").tap();
  const log = await readFile(await (await drawn).path(), "utf8");
  assert.equal(log.split(">kept<").length - 1, shot, "what was ticked stands in the log");
  assertClean(faults);
  await context.close();
});
