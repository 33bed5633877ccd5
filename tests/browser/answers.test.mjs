// A client remarks on the picture and answers; the answer comes back by link to
// the photographer's phone, where it lies on the table by number.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

import { ready, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, phone } from "./support.mjs";

const { guarded, started } = setUp();

/** The version the demonstration table is sent as. */
const SENT = 2;

/** A phone of its own, on whose picture nothing moves by itself. */
const phoned = () => guarded({ ...phone, reducedMotion: "reduce" });

/** Opens an address afresh. */
async function opens(page, address) {
  await page.goto("about:blank");
  await page.goto(address);
  await ready(page);
}

/** Taps the picture where this part of it is. */
async function tapOn(page, key) {
  const box = await page.locator(`.flick [data-key=${key}]`).first().boundingBox();
  await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
}

const shot = process.env.OVERSPREAD_SHOTS;
const look = async (page, name) => {
  if (shot !== undefined) await page.screenshot({ path: `${shot}/${name}.png`, fullPage: true });
};

test("a client's remarks and answer come back by link and lie on the table", async () => {
  const { context, faults } = await phoned();
  const page = await started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Papers" }).tap();
  await page.getByRole("button", { name: "Make the link" }).tap();
  const link = await page.locator("input.link").inputValue();
  await page.getByRole("list", { name: "Versions" }).getByText(`sent as version ${SENT}`).waitFor();

  const other = await phoned();
  const client = await other.context.newPage();
  // A chat app's own browser: nothing to share with, and no clipboard.
  await client.addInitScript(() => {
    Object.defineProperty(navigator, "share", { value: undefined });
    Object.defineProperty(navigator, "canShare", { value: undefined });
    Object.defineProperty(navigator, "clipboard", { value: undefined });
  });
  await opens(client, link);
  await tapOn(client, "item-1");
  const field = () => client.getByLabel("Your remark");
  await field().fill("less oil, please");
  await client.getByRole("button", { name: "Done" }).tap();
  // The same by keyboard: from the list, and a bare place by steps.
  await client.getByRole("button", { name: /^Remark on\s*2\s*dark/ }).press("Enter");
  await field().fill("turn it");
  await client.getByRole("button", { name: "Done" }).press("Enter");
  await client.getByRole("button", { name: "Remark on a place" }).press("Enter");
  await client.getByRole("button", { name: "left", exact: true }).press("Enter");
  await field().fill("the headline runs here");
  await client.getByRole("button", { name: "Done" }).press("Enter");
  const list = client.getByRole("list", { name: "Remarks" }).getByRole("listitem");
  assert.equal(await list.count(), 3);
  await client.getByRole("button", { name: "Delete remark 2" }).tap();
  assert.equal(await list.count(), 2);
  await client.getByRole("button", { name: "Put it back" }).tap();
  assert.equal(await client.locator(".flick [data-key=notes] text").count(), 3, "notes on the picture");
  await client.getByLabel("Your name, if you like").fill("picture desk");
  await assertAccessible(client);
  await look(client, "client");

  // A locked or closed phone keeps them.
  await opens(client, link);
  assert.equal(await list.count(), 3, "after a reload");
  const text = await client.locator("textarea.sent").inputValue();
  assert.match(text, new RegExp(`^Harbour supper, version ${SENT} · .+\\nAnswer: yes with changes\\n1\\. \\d+, .+: less oil, please\\n`));
  assert.ok(text.includes("From: picture desk"), text);
  await client.getByRole("button", { name: "Send this reply" }).tap();
  await client.getByText(/Hold the text above/).waitFor();
  const marked = await client.evaluate(() => {
    const { activeElement: field } = document;
    return field.value.slice(field.selectionStart, field.selectionEnd);
  });
  assert.equal(marked, text, "what can be copied by hand is marked");
  const answer = text.split("\n").at(-1);
  assertClean(other.faults);
  await other.context.close();

  // The table has moved on since it was sent.
  await page.getByRole("button", { name: "Table", exact: true }).tap();
  await page.evaluate((address) => (location.href = address), answer);
  const came = page.getByRole("region", { name: "An answer" });
  await came.getByText(`Yes with changes, to version ${SENT}: picture desk`).waitFor();
  await came.getByText(`It answers version ${SENT}, the one sent last.`).waitFor();
  await came.getByText("Nothing changed.").waitFor();
  assert.ok(await came.evaluate((node) => node.getBoundingClientRect().top < innerHeight * 0.8), "in sight");
  await look(page, "arrived");
  await assertAccessible(page);
  await came.getByRole("button", { name: "Put it on the table" }).tap();
  const on = page.getByRole("region", { name: "Remarks" });
  await on.getByText("less oil, please").waitFor();
  assert.equal(await page.locator(".picture [data-key=notes] text").count(), 3, "on the picture");
  await on.getByLabel("Remark 1 is seen to").tap();
  await page.waitForFunction(() => document.querySelectorAll(".picture [data-key=notes] text").length === 2);
  await look(page, "taken");
  await assertAccessible(page);
  // None of it goes out with the next link.
  await page.getByRole("button", { name: "Papers" }).tap();
  await page.getByRole("button", { name: "Make the link" }).tap();
  const next = await page.locator("input.link").inputValue();
  await page.getByRole("button", { name: "Table", exact: true }).tap();
  await on.getByText(`What changed since version ${SENT}`).waitFor();
  const third = await phoned();
  const elsewhere = await third.context.newPage();
  await opens(elsewhere, next);
  await elsewhere.getByRole("button", { name: "Reply" }).waitFor();
  assert.equal(await elsewhere.locator("[data-key=notes] text").count(), 0, "no remarks in a link");

  // The demonstration table is on every phone, but was not sent from this one.
  await opens(elsewhere, answer);
  await elsewhere.getByText(`It answers version ${SENT}, which was not sent from this phone`).waitFor();
  await elsewhere.getByText(`Version ${SENT} is not kept here`).waitFor();
  // Without the table nothing is lost: an answer is read, and kept.
  const hostile = (name) => readFile(new URL(`../hostile/answers/${name}.link`, import.meta.url), "utf8");
  await elsewhere.evaluate((hash) => (location.hash = hash), await hostile("ok-markup"));
  await elsewhere.getByText("It answers a table that is not on this phone.").waitFor();
  await elsewhere.getByText('<img src="x" onerror="alert(1)">').first().waitFor();
  await elsewhere.getByRole("button", { name: "Keep it for later" }).tap();
  await elsewhere.getByRole("button", { name: "Papers" }).tap();
  await elsewhere.getByRole("button", { name: /^Read the answer of / }).last().tap();
  await elsewhere.getByRole("region", { name: "An answer" }).getByRole("listitem").first().waitFor();
  assertClean(third.faults);
  await third.context.close();

  // What is no whole answer says so, and changes nothing.
  for (const name of ["syntax-verdict", "limit-remarks", "version-newer"]) {
    await page.evaluate((hash) => (location.hash = hash), await hostile(name));
    await page.getByRole("alert").getByText("This answer was not read").waitFor();
  }
  await on.getByText("less oil, please").waitFor();
  assertClean(faults);
  await context.close();
});
