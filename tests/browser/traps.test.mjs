// A link, an answer or a version over which the core falls, and a worker that
// falls at every start: each is told, nothing goes round in circles, and the
// table goes on as it was in a fresh core.

import assert from "node:assert/strict";
import { test } from "node:test";

import { begin, choose, file, go, loaf, replying, saved } from "./layouts.mjs";
import { long, ready, setUp } from "./setup.mjs";
import { assertClean, phone } from "./support.mjs";

const { guarded, started } = setUp();
const still = { ...phone, reducedMotion: "reduce" };

/**
 * Has the core fall whenever what is named in `trap` is asked of it; counted in
 * `falls`. An instance that fell is of no use after it. Runs in the page, before
 * anything of it.
 */
function falling(named) {
  globalThis.trap = named;
  globalThis.falls = 0;
  const weak = ({ exports }) => {
    let dead = false;
    const own = {};
    for (const [name, value] of Object.entries(exports)) {
      own[name] = typeof value !== "function" ? value : (...given) => {
        if (name === globalThis.trap) {
          globalThis.falls += 1;
          dead = true;
        }
        // What is thrown away may be thrown away yet.
        if (dead && !name.startsWith("__wbg_")) throw new WebAssembly.RuntimeError("unreachable");
        return value(...given);
      };
    }
    return { exports: own };
  };
  const [begin, Real] = [WebAssembly.instantiate, WebAssembly.Instance];
  WebAssembly.instantiate = async (module, imports) => ({ instance: weak(await begin(module, imports)), module });
  WebAssembly.Instance = function Instance(...given) {
    return weak(new Real(...given));
  };
}
const trap = (page, name) => page.evaluate((to) => (globalThis.trap = to), name);
const falls = (page) => page.evaluate(() => globalThis.falls);

/** A link of the first table, as it was sent, and an answer to it. */
async function sent(page) {
  const { link, client } = await replying(page);
  await client.getByRole("button", { name: "yes", exact: true }).click();
  const answer = await client.locator("input.link").last().inputValue();
  await client.close();
  return { link, answer };
}

/** Fails unless the table can be worked on: the loaf moves, that is kept and taken back. */
async function assertWorks(page) {
  const before = await file(page);
  // Whatever was chosen.
  await page.keyboard.press("Escape");
  await choose(page);
  const place = await loaf(page);
  await page.locator(".picture").press("ArrowRight");
  assert.notEqual(await loaf(page), place, "it moves");
  await saved(page);
  await page.locator(".picture").press("Control+z");
  assert.equal(await loaf(page), place, "and back");
  assert.equal(await file(page), before, "to the byte");
}

const inHash = (page, address) => page.evaluate((hash) => (location.hash = hash), new URL(address).hash);
const told = (page, words) => page.getByRole("alert").getByText(words).waitFor();

test("a link and an answer that make the core fall are told, and the table goes on", async () => {
  const { context, faults } = await guarded(still);
  await context.addInitScript(falling, "");
  const page = await begin(await started(context));
  const { link, answer } = await sent(page);
  const understood = () => page.getByRole("button", { name: "Understood" }).click();
  const was = await file(page);

  const all = [
    ["planner_open_link", link, /^The link could not be read \(unreachable\)/],
    ["planner_read_answer", answer, /^This answer was not read/],
  ];
  for (const [name, address, words] of long ? all : all.slice(0, 1)) {
    await trap(page, name);
    await inHash(page, address);
    await told(page, words);
    const count = await falls(page);
    await trap(page, "");
    await understood();
    assert.equal(await file(page), was, name);
    if (long) await assertWorks(page);
    assert.equal(await falls(page), count, "and falls no more");
    await page.evaluate(() => history.replaceState(null, "", location.pathname));
  }
  await assertWorks(page);

  assertClean(faults);
  await context.close();
});

test("a version that makes the core fall is told, gone back to or looked at", { skip: !long }, async () => {
  const { context, faults } = await guarded(still);
  await context.addInitScript(falling, "");
  const page = await begin(await started(context));
  await go(page, "Papers");
  await page.getByRole("button", { name: "Keep this as a version" }).click();
  await page.locator(".versions li").first().waitFor();
  await trap(page, "planner_become_json");
  await page.getByRole("button", { name: /^Go back to/ }).first().click();
  await told(page, /^That act stopped the planner/);
  await trap(page, "");
  await page.getByRole("button", { name: "Understood" }).click();
  await assertWorks(page);
  await go(page, "Papers");
  await page.locator(".versions li").first().waitFor();
  const before = await falls(page);
  await trap(page, "planner_open_json");
  await page.locator(".versions .steps button").first().click();
  await page.waitForFunction((count) => globalThis.falls >= count + 2, before);
  await page.locator(".beside .changes, .beside .quiet").first().waitFor();
  await trap(page, "");
  await page.locator(".beside .head button").click();
  assert.equal(await falls(page), before + 2, "over each of the two once");
  await assertWorks(page);
  assertClean(faults);
  await context.close();
});

test("a link the core falls over as it draws it is told, and what was kept is open", { skip: !long }, async () => {
  const { context, faults } = await guarded(still);
  const page = await begin(await started(context));
  const { link } = await sent(page);
  await page.close();
  // Of the link alone, as it is told apart by what it was opened with.
  await context.addInitScript(falling, "");
  await context.addInitScript(() => {
    const { instantiate } = WebAssembly;
    WebAssembly.instantiate = async (...given) => {
      const made = await instantiate(...given);
      const { planner_open_link: open } = made.instance.exports;
      made.instance.exports.planner_open_link = (...link) => {
        globalThis.trap = "planner_patch";
        return open(...link);
      };
      return made;
    };
    // A fresh core is for something else.
    const { Instance } = WebAssembly;
    WebAssembly.Instance = function Fresh(...given) {
      globalThis.trap = "";
      return new Instance(...given);
    };
  });
  const next = await context.newPage();
  await next.goto(link);
  await ready(next);
  await told(next, /^The link could not be read \(unreachable\)/);
  assert.equal(await falls(next), 1, "once");
  await next.getByRole("heading", { name: "Harbour supper" }).waitFor();
  await saved(next);
  await assertWorks(next);
  assertClean(faults);
  await context.close();
});

/** A worker that falls over whatever it is told, and a count of those started. */
function weak() {
  globalThis.workers = 0;
  globalThis.Worker = class extends EventTarget {
    constructor() {
      super();
      globalThis.workers += 1;
    }

    postMessage() {
      // As a script that throws: later, and each time.
      setTimeout(() => {
        if (this.over !== true) this.onerror?.(new ErrorEvent("error", { message: "fell" }));
      });
    }

    terminate() {
      this.over = true;
    }
  };
}

test("a worker that falls at every start is given up, and the table goes on without readings", async () => {
  const { context, faults } = await guarded(still);
  await context.addInitScript(weak);
  const page = await started(context);
  const words = /^The findings of this layout could not be worked out/;
  await told(page, words);
  const workers = () => page.evaluate(() => globalThis.workers);
  /** Waits until whatever may still be on its way has come, and has come to nothing. */
  const quiet = () => page.evaluate(async () => {
    for (let n = 0; n < 40; n += 1) await new Promise((resolve) => setTimeout(resolve));
  });
  await quiet();
  const first = await workers();
  assert.ok(first <= 3, `${first} were started`);
  await page.getByRole("button", { name: "Now yours" }).click();
  await go(page, "Table");
  await choose(page);
  const place = await loaf(page);
  await page.locator(".picture").press("ArrowRight");
  assert.notEqual(await loaf(page), place, "it moves");
  await told(page, words);
  await saved(page);
  await quiet();
  assert.ok((await workers()) <= first + 1, "an act tries again, and no longer");
  assert.equal(JSON.parse(await file(page)).title, "Harbour supper");
  assertClean(faults);
  await context.close();
});
