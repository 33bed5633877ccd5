// The shoot day on a phone: steps over the locked layout, food timers that go
// on while the page is gone, a clock that is set back, the log; and the plan
// over a test photo with a second frame that was bumped.

import assert from "node:assert/strict";
import { test } from "node:test";

import { ready, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, phone } from "./support.mjs";

const at = setUp();

async function papers(page) {
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Papers", exact: true }).click();
}

test("the day goes step by step, its timers outlive the page, and the layout stays locked", async () => {
  const { context, faults } = await at.guarded({ ...phone, reducedMotion: "reduce" });
  // A browser that refuses to keep the screen on, as one on low battery does.
  await context.addInitScript(() => {
    Object.defineProperty(navigator, "wakeLock", {
      value: { request: () => Promise.reject(new DOMException("no", "NotAllowedError")) },
    });
  });
  const page = await at.started(context);
  await papers(page);
  await page.getByRole("button", { name: "Begin the shoot-day steps" }).tap();
  const next = page.getByRole("button", { name: "Next", exact: true });
  await page.getByText("This browser does not keep the screen on", { exact: false }).waitFor();
  await page.getByRole("button", { name: "Heard" }).tap();
  await page.getByRole("heading", { name: "Make the set ready" }).waitFor();
  await assertAccessible(page);
  const short = await page.locator(".ticks label").evaluateAll((all) =>
    all.filter((label) => label.getBoundingClientRect().height < 56).length,
  );
  assert.equal(short, 0, "rows for a knuckle");
  await next.tap();
  await page.locator(".ticks label", { hasText: "herb sprig" }).first().tap();
  const timer = page.getByRole("list", { name: "Food timers" }).locator("li").first();
  await timer.waitFor();
  assert.match(await timer.innerText(), /(9:5\d|10:00) left/, "ten minutes for herbs");

  // Killed and opened again, it is at the same step, and the time has gone on.
  const undo = page.getByRole("button", { name: "Undo", exact: true });
  await page.reload();
  await ready(page);
  await page.getByRole("heading", { name: "Before clean exposure 1" }).waitFor();
  assert.match(await timer.innerText(), /9:\d\d left/, "it went on");
  assert.equal(await undo.count(), 0, "nothing to change the layout with");
  await page.keyboard.press("Control+z");

  // The phone's clock is set an hour back: the food gets no more time.
  await page.evaluate(() => {
    const now = Date.now;
    Date.now = () => now() - 3_600_000;
  });
  await page.getByText("clock was set back", { exact: false }).waitFor();
  assert.match(await timer.innerText(), /9:\d\d left/, "no more time than before");
  await page.getByRole("button", { name: "Heard" }).tap();
  // Twelve minutes on it is past its time, and that is told.
  await page.evaluate(() => {
    const now = Date.now;
    Date.now = () => now() + 720_000;
  });
  await page.getByText("has been past its time for", { exact: false }).waitFor();
  assert.match(await timer.innerText(), /\d:\d\d past/, "past");

  await next.tap();
  await page.getByRole("heading", { name: "Shoot clean exposure 1" }).waitFor();
  await page.getByRole("button", { name: "One frame more" }).tap();
  await page.getByRole("button", { name: "One frame more" }).tap();
  await page.getByText("Looked at in full size", { exact: false }).tap();
  await page.getByRole("button", { name: "Back", exact: true }).tap();
  await next.tap();
  assert.equal(await page.locator(".stepper output").innerText(), "2", "the log holds");
  await page.getByRole("button", { name: "Leave the steps" }).tap();
  await page.getByRole("button", { name: /Go on at step 3/ }).waitFor();
  await undo.click();
  assert.ok(await page.getByRole("button", { name: "Redo" }).isEnabled(), "undone only now");
  assertClean(faults);
  await context.close();
});

/** A photo of the frame of the supper, 1,500 px wide, everything shifted and one thing drifted. */
const photo = (page, shift, drifted) =>
  page.evaluate(
    async ([dx, dy, off]) => {
      const canvas = new OffscreenCanvas(1500, 1000);
      const set = canvas.getContext("2d");
      set.fillStyle = "#423e39";
      set.fillRect(0, 0, 1500, 1000);
      // Discs of two tones, so that each can be found again.
      const spots = [[250, 200], [1250, 220], [1200, 800], [280, 820], [750 + off, 500]];
      spots.forEach(([x, y], n) => {
        for (const [r, tone] of [[60, "#c9b79a"], [38, "#5a4636"], [14 + 3 * n, "#efe6d2"]]) {
          set.fillStyle = tone;
          set.beginPath();
          set.arc(x + dx, y + dy, r, 0, 7);
          set.fill();
        }
      });
      const blob = await canvas.convertToBlob({ type: "image/png" });
      return [...new Uint8Array(await blob.arrayBuffer())];
    },
    [...shift, drifted],
  );

test("the plan is laid over a photo, a drift taken over, and a bump between two frames told", async () => {
  const { context, faults } = await at.guarded({ ...phone, reducedMotion: "reduce" });
  const page = await at.started(context);
  await papers(page);
  const part = page.getByRole("region", { name: "Plan over a test photo" });
  const load = async (name, label, bytes) =>
    part.getByLabel(label).setInputFiles({ name, mimeType: "image/png", buffer: Buffer.from(bytes) });
  await load("no.png", "A photo of the set", [1, 2, 3]);
  await part.getByRole("alert").waitFor();
  await load("first.png", "A photo of the set", await photo(page, [0, 0], 0));
  const shot = part.locator(".shot");
  const tap = async (x, y) => {
    await shot.scrollIntoViewIfNeeded();
    const box = await shot.locator("> canvas").boundingBox();
    await page.touchscreen.tap(box.x + (box.width * x) / 1500, box.y + (box.height * y) / 1000);
  };
  await part.getByText(/^Mark 1 of up to 4/).waitFor();
  await tap(250, 200);
  assert.equal(await part.locator(".plan").count(), 0, "one mark lays nothing");
  await tap(1250, 220);
  await part.locator(".plan").waitFor({ state: "attached" });
  await part.getByText(/The frame (is|lies)/).waitFor();
  await tap(1200, 800);
  await tap(280, 820);
  await part.getByText(/^Tap the middle of/).waitFor();
  await tap(750, 500);
  const drift = part.getByRole("list", { name: "What was measured" }).locator("li").first();
  assert.match(await drift.innerText(), /stands .*cm/, "how far");
  await assertAccessible(page);
  await drift.getByRole("button", { name: "Move it there" }).tap();
  await drift.waitFor({ state: "detached" });
  assert.ok(await page.getByRole("button", { name: "Undo", exact: true }).isEnabled(), "it moved");

  await load("second.png", "Another frame", await photo(page, [6, -4], 0));
  await part.getByText(/The camera moved: \d+/).waitFor();
  await part.getByRole("button", { name: "what differs" }).tap();
  await load("second.png", "Another frame", await photo(page, [0, 0], 0));
  await part.getByText(/The camera stood still/).waitFor();
  await part.getByRole("button", { name: "Put the photo away" }).tap();
  assert.equal(await shot.isVisible(), false, "gone");
  assertClean(faults);
  await context.close();
});
