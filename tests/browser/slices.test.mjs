// The worker reads in slices: what was asked in between is heard, what is
// overtaken is dropped, and a worker that falls halfway is replaced.

import assert from "node:assert/strict";
import { test } from "node:test";

import { setUp } from "./setup.mjs";
import { assertClean, assertNoForeignRequests } from "./support.mjs";

const { guarded, started } = setUp();

/** The demonstration table, at work and read. */
async function open(context) {
  const page = await started(context);
  await page.locator(".first .solid").tap();
  await page.getByRole("button", { name: "Table", exact: true }).tap();
  await page.locator("ol button, ul button").filter({ hasText: /^\s*\d*\s*mussel pot/ }).first().tap();
  await read(page);
  return page;
}

/** Waits until what is open has been read. */
const read = (page) => page.locator(".late").waitFor({ state: "detached" });

/** What the page says of the table. */
const said = (page) => page.getByRole("region", { name: "Findings" }).innerText();

/** Moves the mussel pot, an edit at a time. */
async function edit(page, times = 1) {
  await page.locator(".picture").focus();
  for (let n = 0; n < times; n += 1) await page.keyboard.press("ArrowLeft");
}

/**
 * Within the worker: a clock on which every slice is over as soon as it has
 * begun, a count of slices and of answers, and a slice of this number that
 * waits until it is let go on, or falls.
 */
function slowClock({ waits, falls }) {
  const record = { slices: 0, answers: 0, goOn: undefined };
  globalThis.sliceRecord = record;
  let now = 0;
  performance.now = () => (now += 1_000);
  const later = globalThis.setTimeout.bind(globalThis);
  globalThis.setTimeout = (work, after) =>
    later(() => {
      record.slices += 1;
      if (record.slices === falls) throw new Error("fell");
      if (record.slices === waits) record.goOn = work;
      else work();
    }, after);
  const post = globalThis.postMessage.bind(globalThis);
  globalThis.postMessage = (answer) => {
    if (answer.tell === "read") record.answers += 1;
    post(answer);
  };
}

/** What is said after this many edits, read by a worker left alone. */
async function undisturbed(times) {
  const { context } = await guarded();
  const page = await open(context);
  const before = await said(page);
  await edit(page, times);
  await read(page);
  const after = await said(page);
  assert.notEqual(after, before, "the edits change what is said");
  await context.close();
  return after;
}

test("an edit while it reads ends that reading, and only the newest is told", async () => {
  const { context, faults } = await guarded();
  const page = await open(context);
  const [worker] = page.workers();
  await worker.evaluate(slowClock, { waits: 9 });
  await edit(page);
  const waits = () => worker.evaluate(() => globalThis.sliceRecord.goOn !== undefined);
  while (!(await waits())) await page.waitForTimeout(20);
  await edit(page, 3);
  await page.locator(".late").waitFor();
  await worker.evaluate(() => globalThis.sliceRecord.goOn());
  await read(page);
  const { slices, answers } = await worker.evaluate(() => globalThis.sliceRecord);
  assert.ok(slices > 20, `${slices} slices`);
  assert.equal(answers, 1, "the newest edit is answered, and no other");
  assert.equal(await said(page), await undisturbed(4));
  assertClean(faults);
  await context.close();
});

test("a worker that falls between two slices is replaced and the table read all the same", async () => {
  const { context, faults } = await guarded();
  const page = await open(context);
  const [worker] = page.workers();
  const fell = new Promise((resolve) => worker.once("close", resolve));
  await worker.evaluate(slowClock, { falls: 7 });
  await edit(page);
  await fell;
  await read(page);
  assert.equal(page.workers().length, 1, "another in its place");
  assert.notEqual(page.workers()[0], worker);
  assert.equal(await said(page), await undisturbed(1));
  assertNoForeignRequests(faults);
  await context.close();
});
