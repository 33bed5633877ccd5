// The whole job by keyboard alone: from the first sentence to a step of the day.
// Focus is never lost, never out of sight and never under what stands fast, and
// goes the way one reads.

import assert from "node:assert/strict";
import { test } from "node:test";

import { begin, go } from "./layouts.mjs";
import { kinds, long, setUp } from "./setup.mjs";
import { assertClean, desk, phone } from "./support.mjs";
import { unfold } from "./walk.mjs";

const { guarded, started } = setUp();

/** What has focus: its name, and what is amiss with it. */
const held = (page) =>
  page.evaluate(() => {
    const has = document.activeElement;
    if (has === null || has === document.body) return { name: "", amiss: "focus is lost" };
    const label = has.labels?.[0]?.textContent ?? "";
    const name = (has.getAttribute("aria-label") || label || has.textContent).replace(/\s+/g, " ").trim();
    const box = has.getBoundingClientRect();
    const seen = [0.5, 0.1, 0.9].some((down) =>
      [0.5, 0.1, 0.9].some((across) => {
        const top = document.elementFromPoint(box.left + box.width * across, box.top + box.height * down);
        return top !== null && (has.contains(top) || top.contains(has) || has.labels?.[0]?.contains(top));
      }));
    const { outlineStyle, outlineWidth } = getComputedStyle(has);
    const ring = outlineStyle !== "none" && outlineWidth !== "0px";
    // What is read and not pressed needs none; parts of a date the browser marks itself.
    const quiet = has.matches("section[tabindex='-1'],input[type=date]");
    if (!seen) {
      const top = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
      const by = top === null ? "off the screen" : `under ${top.tagName} “${top.textContent.slice(0, 30)}”`;
      return { name, amiss: `focus is out of sight, ${by} at ${Math.round(box.top)}` };
    }
    return { name, amiss: ring || quiet ? "" : "focus is not shown" };
  });

/** A person who has only keys. */
function keys(page) {
  const sound = async (after) => {
    const { name, amiss } = await held(page);
    assert.equal(amiss, "", `${name} after ${after}`);
    return name;
  };
  /** Goes on with Tab, or back, until this has focus. */
  const reach = async (wanted, key = "Tab") => {
    const passed = [(await held(page)).name];
    const there = (name) => (typeof wanted === "string" ? name === wanted : wanted.test(name));
    if (there(passed[0])) return;
    for (let n = 0; n < 400; n += 1) {
      await page.keyboard.press(key);
      // Past the last control the browser itself has it once.
      if (await page.evaluate(() => document.activeElement === document.body)) continue;
      const name = await sound(`${key} from ${passed.at(-1)}`);
      passed.push(name);
      if (there(name)) return;
    }
    assert.fail(`${wanted} is never reached: ${passed.slice(0, 60).join(" | ")}`);
  };
  const press = async (key, times = 1) => {
    for (let n = 0; n < times; n += 1) await page.keyboard.press(key);
    // Drawn, and what had focus replaced.
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done))));
    return sound(key);
  };
  return {
    press,
    reach,
    /** Goes to it and presses it. */
    async act(wanted, key = "Enter") {
      await reach(wanted);
      return press(key);
    },
    type: (text) => page.keyboard.type(text),
  };
}

test("a table is laid, read and made better by keyboard alone", async () => {
  const { context, faults } = await guarded({ ...desk, reducedMotion: "reduce" });
  const page = await started(context);
  const { act, press, reach, type } = keys(page);
  await act(/^Lay /);
  await page.locator(".was").waitFor();
  await act("Now yours");
  for (const dish of ["pot of mussels", "seared aubergine", "rice"]) await act(dish, "Space");
  await page.locator(".starters.three li").nth(2).waitFor();
  await act("Lay the table");
  await page.getByRole("region", { name: "Findings" }).waitFor();

  await act("Add a thing");
  await reach(/^Trade name or size/);
  await type("soup bowl");
  await act(/^soup bowl/);
  await page.getByText("soup bowl added").first().waitFor();
  await reach("Done adding", "Shift+Tab");
  await press("Enter");
  const chosen = page.locator(".chosen-strip h2");
  assert.equal(await chosen.innerText(), "soup bowl");
  await reach(/^The picture from above/, "Shift+Tab");
  await press("ArrowRight", 2);
  await page.getByText("soup bowl moved").first().waitFor();
  await press("]");
  await page.getByText("soup bowl turned").first().waitFor();
  await press("+");
  await press("0");
  await press("Delete");
  assert.equal(await chosen.count(), 0, "removed");
  await press("Control+z");
  await act(/^\d*\s*soup bowl/);
  await act("Take it away");
  await act("Undo");

  await act("Hands");
  await act("squeeze lemon");
  assert.equal(await page.locator(".picture [data-key^=hand-]").count(), 2, "a pair of hands");
  await act(/left hand: squeezing/);
  await page.locator(".chosen-strip").waitFor();
  await reach("Done", "Shift+Tab");
  await act("hold a dish");
  await page.getByText("left hand: holding").first().waitFor();
  await act("Camera & light");
  await act("Longer focal length");
  await act("Light");
  await act("Half an hour on round the clock");
  await act("Crops");
  await act("4:5 post");
  assert.equal(await page.locator(".keeps button").count(), 1, "a crop");

  await act("Table");
  await act("Let the planner move things");
  await act("Look for three ways");
  await page.locator(".way > button").first().waitFor({ timeout: 60_000 });
  await page.locator(".looking").waitFor({ state: "detached", timeout: 60_000 });
  await act(/^Do all of it/);
  assertClean(faults);
  await context.close();
});

/** Long, as every control of the papers is passed on the way. */
const sent = async () => {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  const page = await started(context);
  const { act, press, reach } = keys(page);
  await act(/^Lay /);
  await page.locator(".was").waitFor();
  await act("Papers");
  await act("Shot list");
  await page.locator(".pages img").first().waitFor();
  await act("Make the link");
  const link = await page.locator("input.link").inputValue();
  await act("Begin the shoot-day steps");
  await page.locator(".day .ticks input").first().waitFor();
  await reach(/\S/);
  await press("Space");
  await act("Next");
  await act("Leave the steps");
  assertClean(faults);

  const client = await context.newPage();
  await client.goto(link);
  await client.getByRole("button", { name: "Reply" }).waitFor();
  const theirs = keys(client);
  await theirs.act("Reply");
  await theirs.act("yes with changes", "Space");
  await theirs.reach("Remark on a place", "Shift+Tab");
  await theirs.press("Enter");
  await theirs.type("less oil");
  await theirs.act("Done");
  assert.match(await client.locator(".sent").inputValue(), /less oil/);
  assertClean(faults);
  await context.close();
};
if (long) test("it is sent, answered and shot by keyboard alone", sent);

/** Goes on with this key from the browser itself until it has focus again; the page keeps what had it. */
async function stops(page, key, into) {
  await page.evaluate((name) => (globalThis[name] = []), into);
  for (let n = 0; n < 1_000; n += 1) {
    await page.keyboard.press(key);
    const more = await page.evaluate((name) => {
      const [has, passed] = [document.activeElement, globalThis[name]];
      if (has === null || has === document.body) return false;
      // Parts of a date have focus one after the other.
      if (has !== passed.at(-1)) passed.push(has);
      return true;
    }, into);
    if (!more) return;
  }
  assert.fail(`${key} never comes to an end`);
}

/** In the page: which stops do not come in the order one reads, and whether the way back is the same. */
function misplaced() {
  const { onward, back } = globalThis;
  const PARTS = ".notice, .head, .looks, .picture, .scores, .say, .row, .places";
  const told = (of) => (of.getAttribute("aria-label") ?? of.textContent).trim().slice(0, 40);
  const faults = [];
  for (const [n, to] of onward.entries()) {
    const from = onward[n - 1];
    if (from === undefined) continue;
    const [part, next] = [from.closest(PARTS), to.closest(PARTS)];
    // What lies in the picture lies over it.
    if (part !== next && part?.contains(next)) continue;
    const [one, other] = (part === next ? [from, to] : [part, next]).map((each) => each.getBoundingClientRect());
    const shared = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
    const line = shared > Math.min(one.height, other.height) / 2;
    const amiss = line ? part === next && other.left < one.left : other.top < one.top;
    if (amiss) faults.push(`${told(from)}, then ${told(to)}`);
  }
  if (onward.length !== back.length || onward.some((each, n) => each !== back.at(-1 - n))) {
    const names = (all) => all.map(told).join(" | ");
    faults.push(`not the same way back: ${names(onward)} and ${names(back)}`);
  }
  return [faults, onward.length];
}

const screens = kinds([["phone", phone], ["desk", desk]]);
const PLACES = ["Table", "Hands", "Camera & light", "Crops", "Papers"];
for (const [name, options] of screens) {
  for (const place of kinds(PLACES)) {
    test(`focus goes through ${place} on a ${name} as one reads, and back`, async () => {
      const { context, faults } = await guarded({ ...options, reducedMotion: "reduce" });
      const page = await begin(await started(context));
      await go(page, place);
      if (place === "Table") await page.locator("ul.things button").first().click();
      if (long) await unfold(page);
      // From where it is to the end, whence it begins anew.
      await stops(page, "Tab", "onward");
      await stops(page, "Tab", "onward");
      await stops(page, "Shift+Tab", "back");
      const [amiss, count] = await page.evaluate(misplaced);
      assert.ok(count > 20, `${count} stops`);
      assert.deepEqual(amiss, [], "the order of focus");
      assertClean(faults);
      await context.close();
    });
  }
}
