// A browser that keeps nothing, or denies one of what keeping is made of: the
// page starts all the same, says what is so, and a table can be laid on it,
// saved as a file and sent as a link.

import assert from "node:assert/strict";
import { cp, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { fileURLToPath } from "node:url";

import { begin, choose, file, go, loaf, saved } from "./layouts.mjs";
import { long, ready, setUp } from "./setup.mjs";
import { assertClean, dist, phone, serve } from "./support.mjs";

const { guarded, started } = setUp();
const still = { ...phone, reducedMotion: "reduce" };

/** Denials, each run in the page before anything of it, and whether layouts are kept all the same. */
const DENIALS = {
  "a database that never answers": [false, () => {
    IDBFactory.prototype.open = () => ({});
    // Seconds are short here.
    const real = setTimeout;
    globalThis.setTimeout = (run, ms, ...given) => real(run, ms >= 1_000 ? ms / 40 : ms, ...given);
  }],
  "a database that fails": [false, () => {
    IDBFactory.prototype.open = () => {
      const request = { error: new DOMException("Internal error opening backing store", "UnknownError") };
      setTimeout(() => request.onerror());
      return request;
    };
  }],
  "a database that is refused": [false, () => {
    IDBFactory.prototype.open = () => {
      throw new DOMException("The operation is insecure", "SecurityError");
    };
  }],
  "no database": [false, () => Object.defineProperty(globalThis, "indexedDB", { value: undefined })],
  "no locks": [true, () => Object.defineProperty(Navigator.prototype, "locks", { value: undefined })],
  "locks that are refused": [true, () => {
    LockManager.prototype.request = () => Promise.reject(new DOMException("denied", "SecurityError"));
  }],
  "no service worker": [true, () => {
    // Also where asking for it is a fault.
    Object.defineProperty(Navigator.prototype, "serviceWorker", {
      get() {
        throw new DOMException("denied", "SecurityError");
      },
    });
  }],
  "a service worker that is refused": [true, () => {
    ServiceWorkerContainer.prototype.register = () => Promise.reject(new DOMException("denied", "SecurityError"));
  }],
  "no promise to stay": [true, () => {
    StorageManager.prototype.persist = () => Promise.reject(new TypeError("denied"));
  }],
  "all of it": [false, () => {
    const denied = {
      get() {
        throw new DOMException("denied", "SecurityError");
      },
    };
    for (const name of ["indexedDB", "localStorage", "sessionStorage", "caches"]) Object.defineProperty(globalThis, name, denied);
    for (const name of ["serviceWorker", "storage"]) Object.defineProperty(Navigator.prototype, name, denied);
    LockManager.prototype.request = () => Promise.reject(new DOMException("denied", "SecurityError"));
  }],
};
/** Those tried where there is no time for all. */
const FEW = ["a database that never answers"];

const REFUSED = /^This device refused to save \(.+\)\. The layout is still open here; keep a copy as a file under Papers\.$/;

/** What the page says of keeping, fails unless it is so. */
async function assertSays(page, keeps) {
  if (keeps) {
    await saved(page);
    assert.equal(await page.getByRole("alert").count(), 0, "nothing is amiss");
    return;
  }
  await page.locator(".head").getByText("not saved", { exact: true }).waitFor();
  assert.match(await page.getByRole("alert").innerText(), REFUSED);
}

/** The first cure, a table of one's own, its file and its link. */
async function job(page, keeps) {
  if (keeps) assert.equal(await page.getByRole("alert").count(), 0, "nothing is amiss");
  else assert.match(await page.getByRole("alert").innerText(), REFUSED, "said at once");
  await page.locator(".first .solid").click();
  await page.locator(".was").waitFor();
  await assertSays(page, keeps);
  await page.getByRole("button", { name: "Now yours" }).click();
  for (const dish of ["black olives", "rice", "dark-crusted loaf"]) {
    await page.getByRole("button", { name: dish, exact: true }).click();
  }
  await page.getByRole("button", { name: "Lay the table" }).click();
  await page.getByRole("heading", { name: "My table" }).waitFor();
  await assertSays(page, keeps);
  const { title, items } = JSON.parse(await file(page));
  assert.equal(title, "My table");
  assert.ok(items.length >= 3, `${items.length} things`);
  await page.getByRole("button", { name: "Make the link" }).click();
  const link = await page.locator("input.link").first().inputValue();
  const client = await page.context().newPage();
  await client.goto(link);
  await client.getByRole("button", { name: "Reply" }).waitFor();
  await client.getByRole("heading", { name: "My table" }).waitFor();
}

for (const [name, [keeps, deny]] of Object.entries(DENIALS).filter(([name]) => long || FEW.includes(name))) {
  test(`with ${name} the page works, and says what is ${keeps ? "" : "not "}kept`, async () => {
    const { context, faults } = await guarded(still);
    // What a page is before its address has none of what is denied.
    await context.addInitScript(`if (location.protocol !== "about:") (${deny})()`);
    const page = await started(context);
    await job(page, keeps);
    assertClean(faults);
    await context.close();
  });
}

test("what could not be read at the start is still kept when the device keeps again", { skip: !long }, async () => {
  const { context, faults } = await guarded(still);
  const page = await begin(await started(context));
  await choose(page);
  await page.keyboard.press("ArrowRight");
  const place = await loaf(page);
  await saved(page);
  await context.addInitScript(() => {
    const { open } = IDBFactory.prototype;
    IDBFactory.prototype.open = function (...given) {
      if (globalThis.well === true) return open.apply(this, given);
      throw new DOMException("The operation is insecure", "SecurityError");
    };
  });
  await page.reload();
  await ready(page);
  await page.getByRole("alert").getByText(REFUSED).waitFor();
  await page.evaluate(() => (globalThis.well = true));
  await page.locator(".first .solid").click();
  await saved(page);
  assert.equal(await page.getByRole("alert").count(), 0, "the act kept all there is");
  await go(page, "Papers");
  const kept = page.locator("button.kept", { hasText: "Harbour supper" });
  await kept.nth(1).waitFor();
  assert.equal(await kept.count(), 2, "the one from before, and the one begun now");
  await page.locator("button.kept:not([aria-current])", { hasText: "Harbour supper" }).last().click();
  await page.waitForFunction((was) => document.querySelector(".picture [data-key=item-3]").getAttribute("transform") === was, place);
  await go(page, "Table");
  await page.locator(".picture").focus();
  await page.keyboard.press("Control+z");
  assert.notEqual(await loaf(page), place, "with its steps");
  assertClean(faults);
  await context.close();
});

test("a service worker whose caches fail holds up no page", { skip: !long }, async () => {
  const folder = await mkdtemp(join(tmpdir(), "overspread-"));
  await cp(fileURLToPath(dist), folder, { recursive: true });
  const worker = join(folder, "service-worker.js");
  // It keeps all at first, and can no longer read it after that.
  const script = await readFile(worker, "utf8");
  await writeFile(worker, `${script}\nself.addEventListener("message", ({ data }) => {
    if (data === "fail") caches.open = caches.match = () => Promise.reject(new DOMException("denied", "UnknownError"));
  });`);
  const { stop, url } = await serve(folder);
  try {
    const { context, faults } = await guarded(still, url);
    const page = await started(context, url);
    await page.evaluate(async () => {
      const { active } = await navigator.serviceWorker.ready;
      active.postMessage("fail");
    });
    await page.reload();
    await ready(page);
    assert.equal(JSON.parse(await file(page)).title, "Harbour supper", "with what is kept");
    assertClean(faults);
    await context.close();
  } finally {
    await stop();
    await rm(folder, { recursive: true });
  }
});
