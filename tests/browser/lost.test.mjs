// Storage that is full, erased or taken over by a newer page at work: it is said,
// work goes on, and once there is room again the next act keeps all of it, with
// every step; and a file of all layouts of which some cannot be read.

import assert from "node:assert/strict";
import { test } from "node:test";

import { begin, choose, file, go, kept, loaf, replying, saved, steps } from "./layouts.mjs";
import { long, ready, setUp } from "./setup.mjs";
import { assertClean, assertNoForeignRequests, painted, phone } from "./support.mjs";

const { guarded, site, started } = setUp();
const still = { ...phone, reducedMotion: "reduce" };

/** At work on the first table, the loaf chosen, each nudge a step of its own. */
async function working(context) {
  const page = await begin(await started(context));
  await page.evaluate(steps);
  await choose(page);
  return page;
}

/** Nudges the loaf; returns where it stood each time. */
async function nudge(page, times) {
  const places = [];
  for (let n = 0; n < times; n += 1) {
    await page.keyboard.press(n % 2 === 0 ? "ArrowRight" : "ArrowDown");
    places.push(await loaf(page));
  }
  return places;
}

/** Fails unless the page, opened again, has the last place and takes back all others. */
async function assertKept(page, places) {
  await page.reload();
  await ready(page);
  assert.equal(await page.getByRole("alert").count(), 0, "nothing is missing");
  for (const place of [...places].reverse()) {
    assert.equal(await loaf(page), place);
    await page.keyboard.press("Control+z");
  }
}

/** Has every transaction that puts something end as on a full device, until there is `room`; runs in the page. */
function full() {
  const { put } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.put = function (what) {
    const request = put.call(this, what);
    if (globalThis.room !== true) {
      // The browser ends it some time after it was handed over, as this does by itself.
      this.add(what);
      const value = new DOMException("no room", "QuotaExceededError");
      Object.defineProperty(this.transaction, "error", { value, configurable: true });
    }
    return request;
  };
}

test("a full device says so, and the next act with room keeps everything", async () => {
  const { context, faults } = await guarded(still);
  const page = await working(context);
  const places = [await loaf(page), ...(await nudge(page, 1))];
  await saved(page);
  await page.evaluate(full);
  places.push(...(await nudge(page, 2)));
  await page.getByRole("alert").getByText("refused to save (no room)").waitFor();
  await page.locator(".head").getByText("not saved").waitFor();
  // Taken back and made again, so that steps lie on either side of what is kept.
  for (const key of ["z", "z", "z", "y", "y", "y"]) await page.keyboard.press(`Control+${key}`);
  assert.equal(await loaf(page), places.at(-1), "work goes on");
  const title = JSON.parse(await file(page)).title;
  assert.equal(title, "Harbour supper", "and can be saved out");
  await page.evaluate(() => (globalThis.room = true));
  await go(page, "Table");
  await page.locator(".picture").focus();
  places.push(...(await nudge(page, 1)));
  await saved(page);
  assert.equal(await page.getByRole("alert").count(), 0);
  await assertKept(page, places);
  assertNoForeignRequests(faults);
  await context.close();
});

/** Fails when the page threw or asked another origin; what the browser itself notes is not counted. */
function assertUnhurt(faults) {
  assertNoForeignRequests(faults);
  assert.deepEqual(faults.filter((fault) => fault.startsWith("uncaught")), []);
}

/** What is done where there is no room, and how the page says that it is not kept. */
const REFUSALS = {
  async "a version"(page) {
    await go(page, "Papers");
    await page.getByRole("button", { name: "Keep this as a version" }).click();
    await page.getByRole("alert").getByText("The version was not kept (no room).").waitFor();
    assert.equal(await page.locator(".versions li").count(), 0);
  },
  async "a thing of one's own"(page) {
    await choose(page);
    await page.locator(".chosen-strip + details > summary").click();
    await page.getByRole("button", { name: "Keep it on your shelf" }).click();
    await page.getByRole("alert").getByText("Your shelf is as it was: this device did not keep the change (no room)").waitFor();
  },
  async "a tick of the day and a frame that was shot"(page) {
    await go(page, "Papers");
    await page.getByRole("button", { name: "Begin the shoot-day steps" }).click();
    const words = page.getByRole("alert").getByText(/^This device keeps nothing \(no room\)\. The steps go on, but are forgotten/);
    const heard = async () => {
      await words.waitFor();
      await page.getByRole("button", { name: "Heard" }).click();
      await words.waitFor({ state: "detached" });
    };
    await heard();
    const tick = page.locator(".day .ticks input").first();
    await tick.check();
    await heard();
    assert.ok(await tick.isChecked(), "it is ticked for now");
    const more = page.getByRole("button", { name: "One frame more" });
    for (let n = 0; n < 12 && (await more.count()) === 0; n += 1) {
      await page.getByRole("button", { name: "Next", exact: true }).click();
      await painted(page);
    }
    await heard();
    await more.click();
    await heard();
    assert.equal(await page.locator(".day .stepper output").innerText(), "1", "it is logged for now");
    await page.getByRole("button", { name: "Leave the steps" }).click();
  },
  async "a client's remark"(page) {
    await page.evaluate(() => (globalThis.room = true));
    const { client } = await replying(page);
    await client.evaluate(full);
    await client.getByRole("button", { name: "Remark on a place" }).click();
    await client.locator(".writing textarea").fill("less oil");
    await client.locator(".writing .tape").click();
    await client.getByText("This device keeps nothing (no room): send the reply before you leave this page.").waitFor();
    const answer = await client.locator("textarea.sent").inputValue();
    assert.match(answer, /less oil/, "and it can be sent");
    await client.close();
  },
};
test("whatever finds no room says so", async () => {
  const { context, faults } = await guarded(still);
  const page = await begin(await started(context));
  await saved(page);
  await page.evaluate(full);
  for (const [n, refused] of Object.values(REFUSALS).entries()) {
    if (long || n < 2) await refused(page);
  }
  assertUnhurt(faults);
  await context.close();
});

/** All layouts kept here with their steps, byte for byte, whatever page keeps them. */
const everything = (page) => kept(page, ["snapshots", "journal", "places"]);

test("what a newer page took over is left to it, said plainly, and work can be saved out", async () => {
  const { context, faults } = await guarded(still);
  const page = await working(context);
  const places = [await loaf(page), ...(await nudge(page, 1))];
  await saved(page);
  const was = await everything(page);
  const newer = await context.newPage();
  await newer.goto(new URL("manifest.webmanifest", site.url).href);
  await newer.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const raised = indexedDB.open("overspread", 6);
        raised.onsuccess = () => resolve(raised.result.close());
        raised.onblocked = reject;
      }),
  );
  // What lies behind another page is painted seldom.
  await page.bringToFront();
  await page.locator(".head").getByText("not saved").waitFor();
  await page.locator(".picture").focus();
  places.push(...(await nudge(page, 1)));
  const words = page.getByRole("alert").getByText(
    "This device refused to save (a newer page of the planner keeps the layouts now; reload this one to go on with it).",
  );
  await words.waitFor();
  for (const place of [...places].reverse()) {
    assert.equal(await loaf(page), place, "nothing is lost in hand");
    await page.keyboard.press("Control+z");
  }
  for (const key of ["y", "y", "y"]) await page.keyboard.press(`Control+${key}`);
  const { items } = JSON.parse(await file(page));
  const { at } = items.find(({ id }) => id === 3);
  assert.equal(`translate(${at.join(" ")})`, places.at(-1), "and it is saved out as it stands");

  assert.equal(await everything(newer), was, "what is kept is as it was");
  if (long) await assertAnew(context);
  assert.equal(await everything(newer), was, "and stays so");
  assertUnhurt(faults);
  await context.close();
});

/** Fails unless a page opened anew, while the newer one is not yet there, says so and works. */
async function assertAnew(context) {
  const again = await context.newPage();
  await again.goto(site.url);
  await ready(again);
  await again.getByRole("alert").getByText(/^This device refused to save \(a newer page of the planner/).waitFor();
  await again.locator(".first .solid").click();
  await again.locator(".was").waitFor();
  assert.equal(JSON.parse(await file(again)).title, "Harbour supper");
}

const erasures = {
  "the browser": async (context, page) => {
    const session = await context.newCDPSession(page);
    await session.send("Storage.clearDataForOrigin", { origin: new URL(site.url).origin, storageTypes: "indexeddb" });
  },
  "another tab": async (context) => {
    const other = await started(context);
    await other.evaluate(
      () =>
        new Promise((resolve, reject) => {
          const gone = indexedDB.deleteDatabase("overspread");
          gone.onsuccess = resolve;
          gone.onblocked = reject;
        }),
    );
    await other.close();
  },
};
for (const [who, erase] of Object.entries(erasures)) {
  test(`what ${who} erases at work the next act keeps afresh`, async () => {
    const { context, faults } = await guarded(still);
    const page = await working(context);
    const places = [await loaf(page), ...(await nudge(page, 3))];
    await saved(page);
    await erase(context, page);
    await page.locator(".head").getByText("not saved").waitFor();
    await page.locator(".picture").focus();
    await page.keyboard.press("Control+z");
    await saved(page);
    await assertKept(page, places.slice(0, -1));
    assertClean(faults);
    await context.close();
  });
}

test("a file of all layouts gives back the good ones and names the bad", async () => {
  const { context, faults } = await guarded(still);
  const page = await begin(await started(context));
  const one = JSON.parse(await file(page));
  const named = (id, title, rest = {}) => ({ ...one, id: `00000000000000${id}`, title, ...rest });
  const all = {
    format: "overspread-layouts",
    layouts: [
      named("a1", "First good"),
      named("a2", "Too small", { table: { ...one.table, width: -1 } }),
      7,
      named("a3", "Second good"),
    ],
    things: [named("a4", "Broken thing", { items: {} })],
    versions: [{ made: 5, name: "Broken version", file: {} }, { made: 6, name: "Good version", file: named("a1", "First good") }],
  };
  const back = async (name) => {
    await page.getByLabel("Open a file").setInputFiles({ name, mimeType: "application/json", buffer: Buffer.from(JSON.stringify(all)) });
    const alert = page.getByRole("alert");
    await alert.getByText(name).waitFor();
    const lines = await alert.locator("li").allTextContents();
    assert.deepEqual(lines.map((line) => /“(.+?)”: ./.exec(line)?.[1]), ["Too small", "untitled", "Broken thing", "Broken version"]);
    return alert.locator("p").innerText();
  };
  assert.match(await back("some.json"), /^2 layouts are back\./);
  for (const title of ["First good", "Second good"]) {
    await page.locator(".kept", { hasText: title }).waitFor();
  }
  assert.match(await back("again.json"), /^0 layouts are back\./, "once each");
  await page.locator(".kept", { hasText: "First good" }).click();
  await page.getByRole("heading", { name: "First good" }).waitFor();
  await go(page, "Papers");
  await page.getByRole("region", { name: "Versions" }).getByText("Good version").first().waitFor();
  assertClean(faults);
  await context.close();
});
