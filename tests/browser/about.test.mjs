// What stands about the table is set by touch in the picture: the light by a
// tap or a drag on its ring, cards, stand and photographer; each a step of its
// own that can be taken back, and drawn in a drag by transforms alone.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

import { toucher } from "./measure.mjs";
import { kinds, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, desk, painted, phone } from "./support.mjs";

const { guarded, started } = setUp();

/** A table of 160 by 100 cm under a frame that is turned by a quarter. */
const table = {
  format: "overspread-layout", version: 0, id: "0000000000000091", next_id: 20, next_number: 20,
  title: "Turned", table: { width: 1600, depth: 1000 },
  frame: { at: [800, 500], width: 900, turn: 90 },
  camera: { format: "full-frame", focal: 35 },
  light: { clock: 0, distance: 1800, height_above_table: 1200, shape: "window", width: 1000, height: 1000 },
  items: [
    { id: 2, number: 2, name: "bowl", prop: "soup-bowl", at: [800, 500], size: { shape: "disc", diameter: 160, rim: 6 }, height: 50 },
  ],
};

async function at(options) {
  const { context, faults } = await guarded({ ...options, reducedMotion: "reduce" });
  const page = await started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Papers", exact: true }).click();
  const buffer = Buffer.from(JSON.stringify(table));
  const files = page.getByLabel("Open a file");
  await files.setInputFiles({ name: "table.json", mimeType: "application/json", buffer });
  await page.getByRole("heading", { name: table.title }).waitFor();
  const press = (name) => page.getByRole("button", { name, exact: true }).click();
  await press("Camera & light");
  const touch = toucher(await context.newCDPSession(page));
  /** Where a place on the table, mm, is on the screen. */
  const screen = ([x, y]) =>
    page.locator(".picture > svg").first().evaluate((svg, [x, y]) => {
      const { a, d, e, f } = svg.getScreenCTM();
      return [a * x + e, d * y + f];
    }, [x, y]);
  /** Waits until the picture has come to rest, and past what makes two taps one. */
  const settle = async () => {
    const seen = () => page.locator(".picture > svg").first().evaluate((svg) =>
      `${svg.getAttribute("viewBox")} ${svg.clientWidth} ${svg.clientHeight}`);
    for (let last = "", now = await seen(); now !== last; last = now, now = await seen()) {
      await page.waitForTimeout(400);
    }
  };
  return {
    context, faults, page, press, screen, settle,
    done: (words) => page.locator(".row .quiet").getByText(words, { exact: true }).waitFor(),
    async tap(place) {
      await settle();
      await page.touchscreen.tap(...(await screen(place)));
    },
    /** Drags with a finger; lifts it when `lift`. */
    async drag(from, to, lift = true) {
      await settle();
      const [a, b] = [await screen(from), await screen(to)];
      await touch("touchStart", ...a);
      for (let n = 1; n <= 8; n += 1) {
        await touch("touchMove", a[0] + ((b[0] - a[0]) * n) / 8, a[1] + ((b[1] - a[1]) * n) / 8);
      }
      await page.waitForTimeout(60);
      if (lift) await touch("touchEnd");
    },
    lift: () => touch("touchEnd"),
    pose: (key) => page.locator(`.picture [data-key="${key}"]`).getAttribute("transform"),
  };
}

/** The layout as a file. */
async function file({ page, press }) {
  await press("Papers");
  const download = page.waitForEvent("download");
  await press("Save as a file");
  const text = await readFile(await (await download).path(), "utf8");
  await press("Camera & light");
  return JSON.parse(text);
}

for (const [name, options] of kinds([["phone", phone], ["phone in the dark", { ...phone, colorScheme: "dark" }]])) {
  test(`the light is told where the window is by tap and drag on a ${name}`, async () => {
    const set = await at(options);
    const { page, press, done, tap, drag, lift, pose, screen, settle, context, faults } = set;
    assert.equal(await page.locator('.picture [data-key="ring"]').count(), 0, "not before it is the matter");
    await press("Light");
    const ring = page.locator('.picture [data-key="ring"]');
    await ring.waitFor({ state: "attached" });
    await settle();
    // The middle of the ring's left side: 9 o'clock of the table, 6 of the picture.
    const box = await ring.locator("path").first().evaluate((path) => {
      const { x, y, width, height } = path.getBBox();
      return { left: x, right: x + width, middle: y + height / 2, bottom: y + height };
    });
    await tap([box.left + 5, box.middle]);
    await done("light at 6 o’clock");
    assert.equal(await page.locator("output").first().innerText(), "6 o’clock", "the panel speaks of the picture too");
    assert.equal((await file(set)).light.clock, 270, "stored of the table");
    await press("Light");
    await settle();
    // 44 px are taken, 22 to either side of the line.
    const wide = (await screen([1000, 0]))[0] - (await screen([0, 0]))[0];
    await tap([box.right - (20 * 1000) / wide, box.middle]);
    await done("light at 12 o’clock");
      // A drag is one step, and until it ends nothing is made anew.
    await page.evaluate(() => {
      globalThis.made = 0;
      const nodes = (changes) => changes.forEach((change) => (globalThis.made += change.addedNodes.length));
      new MutationObserver(nodes).observe(document.querySelector(".picture > svg"), { childList: true, subtree: true });
    });
    await drag([box.right, box.middle], [800, box.bottom], false);
    assert.match(await pose("light"), /^translate\(.+\) rotate\(/, "it follows");
    assert.equal(await page.evaluate(() => globalThis.made), 0, "by transforms alone");
    assert.match(await page.locator(".lens").innerText(), /^3 o’clock$/, "its hour stands clear of the finger");
    await lift();
    await done("light at 3 o’clock");
    assert.equal((await file(set)).light.clock, 180, "below the table");
    for (const clock of [90, 270, 0]) {
      await press("Undo");
      assert.equal((await file(set)).light.clock, clock, "one step each");
    }
    await press("Light");
    await assertAccessible(page);
    assertClean(faults);
    await context.close();
  });
}

test("a card is picked by a tap, dragged, turned, nudged, taken away and brought back", async () => {
  const set = await at(phone);
  const { page, press, done, tap, drag, context, faults } = set;
  await press("Light");
  await press("Add a white card");
  await done("white card set up");
  const card = async () => (await file(set)).cards?.[0];
  /** Picks it; in the other places it is not chosen. */
  const pick = async ({ at }) => {
    await press("Light");
      await tap(at);
    await page.locator('.picture path.chosen[d^="M"]').first().waitFor({ state: "attached" });
  };
  const first = await card();
  await pick(first);
  const own = page.getByRole("button", { name: "White card", exact: true });
  assert.equal(await own.getAttribute("aria-pressed"), "true", "the panel shows which");
  await drag(first.at, [first.at[0] + 60, first.at[1] - 240]);
  await done("card moved");
  const moved = await card();
  assert.ok(Math.hypot(moved.at[0] - first.at[0] - 60, moved.at[1] - first.at[1] + 240) < 60, `${moved.at}`);
  await pick(moved);
  const knob = await page.locator(".picture .handle").evaluate((circle) => [circle.cx.baseVal.value, circle.cy.baseVal.value]);
  await drag(knob, [moved.at[0] + 300, moved.at[1]]);
  await done("card turned");
  assert.notEqual((await card()).turn, moved.turn, "turned");
  await pick(moved);
  await page.locator(".picture").focus();
  await page.keyboard.press("ArrowLeft");
  assert.deepEqual((await card()).at, [moved.at[0] - 10, moved.at[1]], "nudged by a centimetre");
  await pick(moved);
  await page.locator(".picture").focus();
  await page.keyboard.press("Delete");
  await done("card taken away");
  assert.equal(await card(), undefined, "gone");
  for (let n = 0; n < 4; n += 1) await press("Undo");
  assert.deepEqual(await card(), first, "back where it stood");
  // In another place it is not in the way of the things.
  await pick(first);
  await press("Table");
  await painted(page);
  assert.equal(await page.locator('.picture path.chosen[d^="M"]').count(), 0, "no longer chosen");
  assertClean(faults);
  await context.close();
});

test("stand and photographer are put down by taps and dragged", async () => {
  const set = await at(phone);
  const { page, press, done, tap, drag, pose, lift, context, faults } = set;
  const rig = async () => (await file(set)).rig;
  await press("Arm and stand");
  await press("Tap where the stand goes");
  await page.getByText("Tap the place in the picture.").waitFor();
  await assertAccessible(page);
  await tap([800, 940]);
  await done("stand moved");
  const placed = (await rig()).at;
  assert.ok(Math.hypot(placed[0] - 800, placed[1] - 940) < 8, `${placed}`);
  await press("Tap where you stand");
  await tap([300, 940]);
  await done("photographer moved");
  await drag(placed, [placed[0] + 200, placed[1] - 40], false);
  assert.match(await pose("mast-0"), /^translate\(/, "it follows");
  assert.match(await pose("arm"), /rotate\(/, "and the arm turns with it");
  await lift();
  await done("stand moved");
  const dragged = (await rig()).at;
  assert.ok(Math.hypot(dragged[0] - placed[0] - 200, dragged[1] - placed[1] + 40) < 8, `${dragged}`);
  // A tap on it takes it up, the next puts it down: no drag is needed.
  await tap(dragged);
  await page.getByText("Tap the place in the picture.").waitFor();
  await tap([600, 950]);
  await done("stand moved");
  const { at: then, photographer } = await rig();
  assert.ok(Math.abs(then[0] - 600) < 8 && Math.abs(photographer[0] - 300) < 8, `${then} ${photographer}`);
  await drag(photographer, [-40, 700], false);
  await page.keyboard.press("Escape");
  await lift();
  assert.equal(await pose("photographer"), null, "abandoned, it is back");
  assert.deepEqual((await rig()).photographer, photographer, "and unchanged");
  assertClean(faults);
  await context.close();
});

test("with a mouse the light follows as well, and none of it is shown through the lens", async () => {
  const set = await at(desk);
  const { page, press, done, screen, settle, context, faults } = set;
  await press("Light");
  await settle();
  const [x, y] = await screen([800, 1500]);
  const box = await page.locator(".picture").boundingBox();
  await page.mouse.click(x, Math.min(y, box.y + box.height - 12));
  await done("light at 3 o’clock");
  await press("through the lens");
  await page.locator('.picture [data-key="ring"]').waitFor({ state: "detached" });
  await page.mouse.click(x, Math.min(y, box.y + box.height - 12));
  assert.equal((await file(set)).light.clock, 180, "it is only looked at");
  assertClean(faults);
  await context.close();
});
