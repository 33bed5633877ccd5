// Everything a drag does has a way by taps alone: no finger moves while it is
// down, and none is joined by a second one. What is pressed most lies where the
// thumb of the hand that holds the phone reaches.

import assert from "node:assert/strict";
import { test } from "node:test";

import { begin, go } from "./layouts.mjs";
import { kinds, setUp } from "./setup.mjs";
import { assertClean, painted, phone } from "./support.mjs";

const { guarded, started } = setUp();

test("moved, turned, enlarged, picked, lit, placed and cropped without a drag", async () => {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  await context.addInitScript(() => {
    globalThis.drags = 0;
    let down = 0;
    const count = (by) => () => {
      down = Math.max(0, down + by);
      if (down > 1) globalThis.drags += 1;
    };
    addEventListener("pointerdown", count(1), true);
    addEventListener("pointerup", count(-1), true);
    addEventListener("pointermove", (event) => (globalThis.drags += Number(event.buttons > 0)), true);
  });
  const page = await started(context);
  const press = (name, within = page) => within.getByRole("button", { name, exact: true }).first().tap();
  const done = (text) => page.locator(".row").getByText(text).waitFor();
  const thing = (name) => page.locator("ul.things button", { hasText: name }).first().tap();
  const window = () => page.locator(".picture > svg").first().getAttribute("viewBox");
  const drawn = (key) => page.locator(`.picture [data-key="${key}"]`).first().getAttribute("transform");

  await page.locator(".first .solid").tap();
  await press("Table");
  await thing("mussel pot");
  const before = await drawn("item-1");
  await page.locator(".chosen-strip + details > summary").tap();
  await press("Right 1 cm");
  await done("mussel pot moved");
  assert.notEqual(await drawn("item-1"), before);
  await press("Turn 5° clockwise");
  await done("mussel pot turned");
  await press("Done");

  // What two fingers and one on the bare board do.
  const whole = await window();
  await press("Enlarge the picture");
  const larger = await window();
  assert.ok(Number(larger.split(" ")[2]) < Number(whole.split(" ")[2]), "enlarged");
  for (const way of ["left", "right", "above", "below"]) {
    const from = await window();
    await press(`See what lies ${way}`);
    assert.notEqual(await window(), from, way);
  }
  await press("Make the picture smaller");
  await press("Whole picture");
  assert.equal(await window(), whole, "and back");

  // A loop round things: taps pick them.
  await press("Pick several");
  await page.getByLabel("Pick the mussel pot").tap();
  await page.getByLabel("Pick the loaf").tap();
  await press("Left 1 cm");
  await done("2 things moved");
  await press("Done");

  await press("Hands");
  await page.locator("ul.things button").first().tap();
  await press("Up 1 cm");
  await done("moved");
  await press("An hour on");

  await press("Camera & light");
  await press("Light");
  await press("Half an hour on round the clock");
  await press("Add a white card");
  await press("Card 5 cm to the right");
  await press("Arm and stand");
  await press("Tap where you stand");
  const box = await page.locator(".picture").boundingBox();
  await page.touchscreen.tap(box.x + box.width * 0.3, box.y + box.height - 12);
  await done("photographer moved");
  await press("Tap where the stand goes");
  await page.touchscreen.tap(box.x + box.width * 0.6, box.y + 12);
  await done("stand moved");

  await press("Crops");
  await page.locator("details:has(> section.panel) > summary").first().tap();
  await page.locator("details section.panel .stepper button").first().tap();
  await done(/crop|changed|upright/);
  assert.equal(await page.evaluate(() => globalThis.drags), 0, "no finger moved while it was down");
  assertClean(faults);
  await context.close();
});

const sizes = kinds([
  ["a phone", phone],
  ["a small phone", { ...phone, viewport: { width: 360, height: 640 } }],
  ["a narrow phone", { ...phone, viewport: { width: 320, height: 640 } }],
]);
for (const [name, options] of sizes) {
  test(`the thumb reaches what is pressed most on ${name}`, async () => {
    const { context, faults } = await guarded({ ...options, reducedMotion: "reduce" });
    const page = await begin(await started(context));
    const places = page.locator(".places button");
    const row = page.locator(".row button");
    const high = [];
    /** Notes which of these do not lie in the lower half of the screen, by their middle, and whole on it. */
    const reached = async (where, ...all) => {
      await painted(page);
      for (const each of all) {
        const [what, { top, bottom }, tall] = await each.evaluate((button) =>
          [button.textContent, button.getBoundingClientRect().toJSON(), innerHeight]);
        if ((top + bottom) / 2 < tall / 2 || bottom > tall) high.push(`${where}: ${what} from ${top} to ${bottom} of ${tall}`);
      }
    };
    const strip = page.locator(".chosen-strip").getByRole("button", { name: "Done", exact: true });
    for (const place of ["Hands", "Camera & light", "Crops", "Papers", "Table"]) {
      await go(page, place);
      assert.equal((await places.count()) + (await row.count()), 7, "the places, Undo and Redo");
      await reached(place, ...(await places.all()), ...(await row.all()));
      await reached(place, page.locator(".say button").first());
    }
    const opens = page.locator(".find", { has: page.locator(".tape") }).first();
    await reached("a finding", opens.locator(".tape").first());
    await opens.locator("> button").click();
    await page.locator(".working").waitFor();
    await reached("a finding that is open", opens.locator(".tape").first());
    await page.locator("ul.things button", { hasText: "loaf" }).first().click();
    await strip.waitFor();
    await reached("a thing", strip);
    await strip.click();
    await page.getByRole("button", { name: "Pick several", exact: true }).click();
    await reached("picked", page.locator(".chosen-strip button").first());
    await go(page, "Hands");
    await page.locator("ul.things button").first().click();
    await strip.waitFor();
    await reached("a hand", strip);
    assert.deepEqual(high, [], "out of the thumb's reach");
    assertClean(faults);
    await context.close();
  });
}
