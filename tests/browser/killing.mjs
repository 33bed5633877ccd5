// Work at random, a tab or the whole browser killed in the middle of an act, and
// what is found after it: the layout as it was before that act or as it is after
// it, never older and nothing else.

import assert from "node:assert/strict";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";

import { begin, file, go, saved, steps } from "./layouts.mjs";
import { toucher } from "./measure.mjs";
import { ready } from "./setup.mjs";
import { processes } from "./slow.mjs";
import { launching, phone, require } from "./support.mjs";

const { chromium } = require("playwright-core");

/** How long after an act at most the page is killed, ms. */
export const WITHIN = 300;
/** The share of acts that the page has taken in by then; the others may be on their way. */
const ENDED = 0.75;
/** How long an act is waited for, ms; one that changes nothing never comes. */
const SOON = 2_000;
/** How long what was killed may take to be gone, ms. */
const HELD = 30_000;
/** How long a kill and all that is looked at after it may take, ms: a browser that answers nothing is no outcome. */
const LONGEST = 180_000;
/** Every so manieth kill takes the whole browser. */
const WHOLE = 5;
/** Most layouts laid. */
const LAYOUTS = 4;
/** Kills after which all that is kept is looked through. */
const LOOK = 20;

/** Lehmer's generator with Park and Miller's newer factor: numbers from 0 to 1 of a whole seed above 0. */
export function random(seed) {
  let state = (seed % 2_147_483_646) + 1;
  const next = () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
  return { next, among: (list) => list[Math.floor(next() * list.length)], whole: (most) => 1 + Math.floor(next() * most) };
}

const button = (page, name) => page.getByRole("button", { name, exact: true });

/** Chooses any thing of the table, with the picture under the keys. */
async function choose(page, draw) {
  await go(page, "Table");
  const things = page.getByRole("region", { name: "Things on the table" }).getByRole("listitem").getByRole("button");
  await things.nth(Math.floor(draw.next() * (await things.count()))).click();
  await page.locator(".picture").focus();
}

const press = (page, key) => ({ fire: () => page.keyboard.press(key) });
const ARROWS = ["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown"];

/**
 * What is done, by kind: each makes ready all but the last touch and says how
 * that is fired and what it leads to: `undo`, a step that can be taken back to
 * before it (usual); `redo`, one that can be made again; `burst`, so many
 * nudges at once; `beside`, something that is no layout; `open`, another layout.
 */
const ACTS = {
  async nudge(page, draw) {
    await choose(page, draw);
    return press(page, draw.among(ARROWS));
  },
  async turn(page, draw) {
    await choose(page, draw);
    return press(page, draw.among(["[", "]"]));
  },
  async burst(page, draw) {
    await choose(page, draw);
    const [count, key] = [draw.whole(6) + 2, draw.among(ARROWS)];
    // What is locked does not move, nor does it in a burst.
    await page.keyboard.press(key);
    if (!(await page.locator(".row .quiet").innerText()).includes("moved")) return press(page, key);
    await saved(page);
    const was = await file(page);
    await go(page, "Table");
    const fire = () =>
      page.locator(".picture").evaluate((picture, [times, key]) => {
        for (let n = 0; n < times; n += 1) picture.dispatchEvent(new KeyboardEvent("keydown", { key }));
      }, [count, key]);
    return { fire, leads: "burst", count, was };
  },
  async drag(page, draw) {
    await go(page, "Table");
    const touch = toucher(await page.context().newCDPSession(page));
    const things = page.locator(".picture > svg").first().locator("[data-key^=item-]");
    await page.locator(".picture").scrollIntoViewIfNeeded();
    const count = await things.count();
    // What lies under something else, or is locked, does not follow the finger.
    for (let tried = 0; tried < 8; tried += 1) {
      const box = await things.nth(Math.floor(draw.next() * count)).boundingBox();
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      await touch("touchStart", x, y);
      for (let step = 1; step <= 6; step += 1) await touch("touchMove", x + 4 * step, y + 2 * step);
      await page.waitForTimeout(100);
      if (await page.locator(".lens").isVisible()) return { fire: () => touch("touchEnd") };
      await touch("touchEnd");
    }
    return ACTS.nudge(page, draw);
  },
  async add(page, draw) {
    await go(page, "Table");
    const begin = button(page, "Add a thing");
    if ((await begin.count()) > 0) await begin.click();
    await page.getByLabel("Trade name or size").fill(draw.among(["coupe", "pasta bowl", "soup spoon", "lemon"]));
    const found = page.locator(".finds li button:not([aria-pressed])").first();
    await found.waitFor();
    return { fire: () => found.tap() };
  },
  async remove(page, draw) {
    await choose(page, draw);
    return press(page, "Delete");
  },
  async undo(page, draw) {
    await go(page, "Table");
    if (await button(page, "Undo").isDisabled()) return ACTS.nudge(page, draw);
    return { ...press(page, "Control+z"), leads: "redo" };
  },
  async redo(page, draw) {
    await go(page, "Table");
    if (await button(page, "Undo").isDisabled()) return ACTS.nudge(page, draw);
    await button(page, "Undo").click();
    await saved(page);
    const was = await file(page);
    return { ...press(page, "Control+y"), was };
  },
  async remedy(page, draw) {
    await go(page, "Table");
    const tape = page.locator(".find .tape").first();
    if ((await tape.count()) === 0) return ACTS.nudge(page, draw);
    return { fire: () => tape.click() };
  },
  async rename(page, draw) {
    await go(page, "Papers");
    await page.getByLabel("Title").first().fill(`Supper ${draw.whole(1e6)}`);
    return press(page, "Enter");
  },
  async version(page, draw) {
    await go(page, "Papers");
    const keep = button(page, "Keep this as a version");
    if ((await keep.count()) === 0) return ACTS.rename(page, draw);
    return { fire: () => keep.click(), leads: "beside" };
  },
  async tick(page, draw) {
    await go(page, "Papers");
    await page.getByRole("button", { name: /^(Begin the shoot-day steps|Go on at step)/ }).click();
    const ticks = page.locator(".ticks label");
    if ((await ticks.count()) === 0) await button(page, "Next").click();
    return { fire: () => ticks.nth(Math.floor(draw.next() * 3)).tap(), leads: "beside" };
  },
  async remark(page, draw) {
    await go(page, "Papers");
    await button(page, "Make the link").click();
    await saved(page);
    const link = await page.locator("input.link").inputValue();
    const was = await file(page);
    await page.goto("about:blank");
    await page.goto(link);
    await ready(page);
    await page.getByRole("list", { name: "What is in the picture" }).getByRole("button").first().click();
    const field = page.getByLabel("Your remark");
    return { fire: () => field.fill(`less oil ${draw.whole(1e6)}`), leads: "beside", was, at: link };
  },
  async shelf(page, draw) {
    await go(page, "Papers");
    const list = page.getByText("Props to pull", { exact: true });
    await list.click();
    const rows = page.getByRole("list", { name: "Props to pull" }).getByRole("listitem");
    const row = rows.nth(Math.floor(draw.next() * Math.min(6, await rows.count())));
    await row.locator("summary").click();
    const own = row.getByRole("button", { name: /^I own/ });
    if ((await own.count()) === 0) return ACTS.rename(page, draw);
    return { fire: () => own.tap(), leads: "beside" };
  },
  async open(page, draw) {
    await go(page, "Papers");
    const others = page.locator(".shelf .kept:not([aria-current]):is(button)");
    const count = await others.count();
    if (count + 1 < LAYOUTS) {
      await button(page, "Lay a new table").click();
      const starters = page.locator(".starters button");
      await starters.first().waitFor();
      return { fire: () => starters.nth(Math.floor(draw.next() * 3)).click(), leads: "open" };
    }
    return { fire: () => others.nth(Math.floor(draw.next() * count)).click(), leads: "open" };
  },
};
/** Those of many touches come more often than those of one's whole work. */
const OFTEN = ["nudge", "nudge", "burst", "burst", "drag", "drag", "add", "turn", "undo", ...Object.keys(ACTS)];

/** What is kept that is no layout. */
const beside = (page) =>
  page.evaluate(async () => {
    const done = (request) => new Promise((resolve) => (request.onsuccess = () => resolve(request.result)));
    const database = await done(indexedDB.open("overspread"));
    const found = {};
    for (const store of ["versions", "days", "answers", "snapshots"]) {
      const all = await done(database.transaction(store).objectStore(store).getAll());
      const own = all.filter(({ key, thing }) => key !== "last" && (store !== "snapshots" || thing === true));
      found[store] = own.map((each) => JSON.stringify(each));
    }
    database.close();
    return found;
  });

/** How many entries differ from one to the other. */
function differing(before, after) {
  const sides = [before, after].map((side) => new Set(Object.values(side).flat()));
  const only = (one, other) => [...one].filter((entry) => !other.has(entry)).length;
  return Math.max(only(sides[0], sides[1]), only(sides[1], sides[0]));
}

/** All layouts kept here, by id. */
async function everything(page) {
  await go(page, "Papers");
  const download = page.waitForEvent("download");
  await button(page, "Save all layouts in one file").click();
  const { layouts } = JSON.parse(await readFile(await (await download).path(), "utf8"));
  return new Map(layouts.map((layout) => [layout.id, layout]));
}

/** A page at work that can be killed, with its browser or alone. */
class Victim {
  #folder;
  #context;

  constructor(url) {
    this.url = url;
  }

  async start() {
    this.#folder ??= await mkdtemp(join(tmpdir(), "overspread-profile-"));
    this.#context = await chromium.launchPersistentContext(this.#folder, { ...launching, ...phone, reducedMotion: "reduce" });
    this.#context.setDefaultTimeout(15_000);
    await this.#context.addInitScript(steps);
    return this.open();
  }

  async open(address = this.url) {
    const fresh = () => this.#context.newPage();
    // A browser may still hand out a process made in advance that was killed with the page's.
    const page = await fresh().catch(fresh);
    await page.goto(address);
    await ready(page);
    this.page = page;
    return page;
  }

  /** Kills the page, or the whole browser, so many ms after an act was begun or, where it `ended`, was taken in; tells whether it changed anything. */
  async kill({ whole, ended, after }, { fire, leads }) {
    const pids = await processes(this.#context.browser(), whole ? "browser" : "renderer");
    assert.ok(pids.length > 0, "there is something to kill");
    const gone = whole
      ? new Promise((resolve) => this.#context.once("close", resolve))
      : new Promise((resolve) => this.page.once("crash", resolve));
    const fired = fire().catch(() => undefined);
    if (ended) await fired;
    // A page under load has not yet made it; what changes nothing is waited for as long as anything is.
    const changes = ended && !["beside", "open"].includes(leads);
    const named = () => document.querySelector(".row .quiet")?.textContent !== "";
    const made = !changes || (await this.page.waitForFunction(named, undefined, { timeout: SOON }).then(() => true, () => false));
    await pause(after);
    for (const pid of pids) process.kill(pid, "SIGKILL");
    const late = pause(HELD, undefined, { ref: false }).then(() => assert.fail("what was killed has not ended"));
    await Promise.race([gone, late]);
    if (!whole) await this.page.close();
    return made;
  }

  /** The page again, after it was killed. */
  async again(whole, address) {
    if (whole) {
      await this.start();
      if (address !== undefined) await this.page.close().then(() => this.open(address));
      return this.page;
    }
    return this.open(address);
  }

  async end() {
    await Promise.race([this.#context?.close(), pause(HELD, undefined, { ref: false })]);
    if (this.#folder !== undefined) await rm(this.#folder, { recursive: true, force: true });
  }
}

/** From wherever the page was opened to work on the layout. */
async function atWork(page, url) {
  assert.equal(await page.getByRole("alert").count(), 0, "nothing is reported");
  const leave = button(page, "Leave the steps");
  if ((await leave.count()) > 0) await leave.click();
  if ((await page.locator("main.client").count()) > 0) {
    await page.goto("about:blank");
    await page.goto(url);
    await ready(page);
  }
  assert.equal(await page.getByRole("alert").count(), 0, "nothing is reported");
  assert.equal(await page.getByText("Another tab is working").count(), 0, "it may be worked on");
}

/** Takes a step back, or makes one again, and reads the layout. */
async function stepped(page, word) {
  const step = button(page, word);
  if (await step.isDisabled()) return undefined;
  await step.click();
  await saved(page);
  return file(page);
}

/** Fails, with the first line that differs, unless both layouts are the same to the byte. */
function assertSame(found, wanted, why) {
  if (found === wanted) return;
  const [lines, others] = [found, wanted].map((text) => String(text).split("\n"));
  const at = lines.findIndex((line, n) => line !== others[n]);
  const around = (all) => all.slice(Math.max(0, at - 6), at + 2).join("\n");
  assert.fail(`${why}: found\n${around(lines)}\nwanted\n${around(others)}`);
}

/**
 * What became of the act in hand, `kept` or `lost`, and the layout's file at the
 * end of looking; fails when it is neither.
 */
async function judged(page, act, before, layouts) {
  const after = await file(page);
  const now = JSON.parse(after);
  if (act.leads === "open" && now.id !== JSON.parse(before.file).id) {
    assert.deepEqual(now, layouts.get(now.id) ?? now, "as it was left");
    return ["kept", after];
  }
  if (act.leads === "beside") {
    assertSame(after, before.file, "the layout is as it was");
    const changed = differing(before.beside, before.found);
    assert.ok(changed <= 1, `${changed} things differ beside the layout`);
    return [changed === 1 ? "kept" : "lost", after];
  }
  if (act.leads === "burst") {
    for (let n = 2; n < act.count; n += 1) await button(page, "Undo").click();
    // All but one of them are there: the last may be in hand.
    if ((await stepped(page, "Undo")) === before.file) return ["lost", before.file];
    assertSame(await stepped(page, "Undo"), before.file, `all but one of ${act.count} nudges were kept`);
    return ["kept", before.file];
  }
  if (after === before.file) return ["lost", after];
  const [there, back] = act.leads === "redo" ? ["Redo", "Undo"] : ["Undo", "Redo"];
  assertSame(await stepped(page, there), before.file, "one step from what was before");
  assertSame(await stepped(page, back), after, "and back");
  return ["kept", after];
}

/** Kills `count` times, in acts of any kind unless they are named; tells each and returns them all. */
export async function killing({ url, count, seed, tell = () => undefined, kind: of, whole = (n) => n % WHOLE === 0 }) {
  const draw = random(seed);
  const victim = new Victim(url);
  const all = [];
  const layouts = new Map();
  try {
    let page = await begin(await victim.start());
    let known = await file(page);
    for (let n = 1; n <= count; n += 1) {
      const kind = of?.(n) ?? draw.among(OFTEN);
      const after = Math.floor(draw.next() * WITHIN);
      const told = { n, kind, after, whole: whole(n), ended: draw.next() < ENDED };
      let doing = "made ready";
      const work = async () => {
        const act = await ACTS[kind](page, draw);
        // What made it ready may be an act as well.
        const before = { file: act.was ?? known, beside: await beside(page) };
        told.ended ||= act.leads === "burst";
        doing = "killed";
        const made = await victim.kill(told, act);
        doing = "opened again";
        page = await victim.again(told.whole, act.at);
        doing = "looked at";
        before.found = await beside(page);
        await atWork(page, url);
        [told.came, known] = await judged(page, act, before, layouts);
        if (!made && told.came === "lost") told.came = "nothing";
        const now = JSON.parse(known);
        layouts.set(now.id, now);
        if (n % LOOK === 0 || n === count) {
          const kept = await everything(page);
          for (const [id, layout] of layouts) assert.deepEqual(kept.get(id), layout, `${layout.title} as it was left`);
        }
      };
      try {
        const late = pause(LONGEST, undefined, { ref: false }).then(() => assert.fail(`it hangs while it is ${doing}`));
        await Promise.race([work(), late]);
      } catch (error) {
        throw new Error(`kill ${n} of seed ${seed}: ${kind}, ${told.whole ? "browser" : "tab"}, ${after} ms, ${told.ended ? "ended" : "begun"}`, { cause: error });
      }
      tell(told);
      all.push(told);
    }
  } finally {
    await victim.end();
  }
  return all;
}
