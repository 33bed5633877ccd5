// The built page as it is delivered: it starts, alone, under its policy, from a
// server, without a network and from a disk, and takes an update only when told.

import assert from "node:assert/strict";
import { readFile, readdir } from "node:fs/promises";
import { join } from "node:path";
import { test } from "node:test";
import { fileURLToPath } from "node:url";

import { renewable } from "./newer.mjs";
import { setUp } from "./setup.mjs";
import {
  assertAccessible, assertClean, desk, dist, keptForOffline, phone, singleFile,
} from "./support.mjs";

const { guarded, site, started } = setUp();

for (const [name, size] of [["phone", phone], ["desk", desk]]) {
  test(`starts on a ${name} and asks no other origin`, async () => {
    const { context, faults } = await guarded(size);
    const page = await started(context);
    await keptForOffline(page);
    await assertAccessible(page);
    assertClean(faults);
    await context.close();
  });
}

test("the policy refuses script, markup and addresses that are not ours", async () => {
  const { context, faults } = await guarded();
  const page = await started(context);
  const outcome = await page.evaluate(async () => {
    const tried = async (act) => {
      try {
        await act();
        return "allowed";
      } catch {
        return "refused";
      }
    };
    return {
      elsewhere: await tried(() => fetch("https://elsewhere.invalid/")),
      markup: await tried(() => document.body.insertAdjacentHTML("beforeend", "<b>1</b>")),
      script: await tried(() => {
        const script = document.createElement("script");
        script.textContent = "globalThis.ran = true";
        document.body.append(script);
        if (globalThis.ran !== true) throw new Error("did not run");
      }),
      worker: await tried(() => new Worker("https://elsewhere.invalid/worker.js")),
      policy: await tried(() => globalThis.trustedTypes.createPolicy("another", {})),
    };
  });
  assert.deepEqual(new Set(Object.values(outcome)), new Set(["refused"]), JSON.stringify(outcome));
  assert.ok(faults.length > 0, "the guard noted what was refused");
  await context.close();
});

test("opens without a network after one visit, whatever the query", async () => {
  const { context, faults } = await guarded();
  const page = await started(context);
  await keptForOffline(page);
  await context.setOffline(true);
  for (const address of ["", "?from=home-screen", "index.html#x"]) {
    await started(context, site.url + address);
  }
  assertClean(faults);
  await context.close();
});

test("opens from a disk with nothing beside it", async () => {
  const { context, faults } = await guarded(phone, singleFile);
  await context.setOffline(true);
  const requests = [];
  context.on("request", (request) => requests.push(request.url()));
  const page = await started(context, singleFile);
  const outside = requests.filter((url) => !/^(blob|data):/.test(url) && url !== singleFile);
  assert.deepEqual(outside, [], "the single file fetched something");
  assertClean(faults);
  await context.close();
});

test("a newer page waits until it is accepted", async () => {
  await renewable(async (url, publish) => {
    const { context, faults } = await guarded(phone, url);
    const page = await started(context, url);
    await keptForOffline(page);
    await page.evaluate(() => (globalThis.sameDocument = true));

    await publish();
    await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
    const accept = page.locator("[data-act=update]");
    await accept.waitFor();
    assert.equal(await page.evaluate(() => globalThis.sameDocument), true, "no forced reload");
    assert.equal(await page.title(), await titleOf(dist), "the open page is still the older one");

    await Promise.all([page.waitForEvent("load"), accept.click()]);
    assert.equal(await page.title(), "Newer", "the newer page after consent");
    assertClean(faults);
    await context.close();
  });
});

async function titleOf(folder) {
  const page = await readFile(new URL("index.html", folder), "utf8");
  return /<title>([^<]*)/.exec(page)[1];
}

test("every emitted file a later visit may need is kept for use offline", async () => {
  const files = await readdir(dist, { recursive: true, withFileTypes: true });
  const emitted = files
    .filter((file) => file.isFile())
    .map((file) => join(file.parentPath ?? file.path, file.name).slice(fileURLToPath(dist).length))
    .filter((name) => !["service-worker.js", "overspread.html"].includes(name))
    // Icons of a home screen, and what shows a link where the planner never was.
    .filter((name) => !name.endsWith(".png") && !name.startsWith("early-"));
  const { context } = await guarded();
  const page = await started(context);
  await keptForOffline(page);
  const keys = (scope) =>
    page.evaluate(async (scope) => {
      const [name] = await caches.keys();
      const requests = await (await caches.open(name)).keys();
      return requests.map((request) => decodeURI(request.url.slice(scope.length)));
    }, scope);
  let kept = await keys(site.url);
  // What makes papers follows in the background.
  for (let n = 0; kept.length < emitted.length && n < 100; n += 1) {
    await page.waitForTimeout(100);
    kept = await keys(site.url);
  }
  assert.deepEqual(kept.sort(), emitted.sort(), "kept files");
  await context.close();
});
