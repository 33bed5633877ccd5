// Papers as files: a PDF is made by a module fetched when it is asked for, kept
// in the background for a day without a network, and missed with a plain word.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

import { setUp } from "./setup.mjs";
import { assertClean, assertNoForeignRequests, keptForOffline, phone } from "./support.mjs";

const { guarded, site } = setUp();

/** The supper's papers, at work. */
async function papers(options = {}) {
  const { context, faults } = await guarded({ ...phone, acceptDownloads: true, ...options });
  const asked = [];
  context.on("request", (request) => asked.push(request.url().slice(site.url.length)));
  const page = await context.newPage();
  await page.goto(site.url);
  await page.waitForSelector("html[data-core=ready]");
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Papers", exact: true }).click();
  return { context, faults, asked, page, picture: page.getByRole("region", { name: "Picture" }) };
}

/** What is saved when `name` is pressed. */
async function saved(page, panel, name) {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    panel.getByRole("button", { name, exact: true }).click(),
  ]);
  return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
}

test("papers are saved as files, without a network too", async () => {
  const { context, faults, page, picture } = await papers();
  const online = await saved(page, picture, "Save as PDF");
  assert.equal(online.name, "harbour-supper.pdf");
  assert.equal(online.bytes.subarray(0, 5).toString(), "%PDF-");
  assert.match(online.bytes.toString("latin1"), /\/Count 1\b/, "one page");
  await picture.getByText("The file is ready.").waitFor();

  await keptForOffline(page);
  await page.waitForFunction(async () => {
    const kept = await (await caches.open((await caches.keys())[0])).keys();
    return kept.filter(({ url }) => url.includes("outputs-")).length === 2;
  });
  await context.setOffline(true);
  const offline = await saved(page, picture, "Save as PDF");
  assert.ok(offline.bytes.equals(online.bytes), "the same bytes");
  assertClean(faults);
  await context.close();
});

test("what makes papers is not fetched before, and missed plainly", async () => {
  const { context, faults, asked, page, picture } = await papers({ serviceWorkers: "block" });
  assert.deepEqual(asked.filter((name) => name.startsWith("outputs-")), [], "not yet");
  await context.setOffline(true);
  await picture.getByRole("button", { name: "Save as PDF", exact: true }).click();
  await picture.getByText("is not on this phone yet").waitFor();
  await picture.getByRole("button", { name: "Print instead" }).waitFor();
  await context.setOffline(false);
  await saved(page, picture, "Save as PDF");
  assert.equal(await picture.getByText("is not on this phone yet").count(), 0, "told no more");
  assertNoForeignRequests(faults);
  await context.close();
});
