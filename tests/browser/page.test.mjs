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

/** What the policy is to refuse, by the name of each of its rules. */
const REFUSED = [
  "connect-src", "img-src", "require-trusted-types-for", "script-src-elem", "style-src-attr", "trusted-types",
];

/** Tries all that within the page; which rules refused something, and whether anything came through. */
const tried = (page) =>
  page.evaluate(async (wanted) => {
    const refused = new Set();
    addEventListener("securitypolicyviolation", ({ effectiveDirective }) => refused.add(effectiveDirective));
    const script = "globalThis.ran = true";
    const acts = [
      () => fetch("http://127.0.0.1:9/", { mode: "no-cors" }),
      () => document.body.append(Object.assign(new Image(), { src: "http://127.0.0.1:9/" })),
      () => document.body.insertAdjacentHTML("beforeend", "<b>1</b>"),
      () => import(`data:text/javascript,${script}`),
      () => document.body.append(Object.assign(document.createElement("script"), { textContent: script })),
      () => document.body.setAttribute("onclick", script),
      () => document.body.setAttribute("style", "color: red"),
      () => globalThis.trustedTypes.createPolicy("another", {}),
    ];
    for (const act of acts) {
      try {
        await act();
      } catch {
        // That it throws says nothing: it may fail without any policy.
      }
    }
    document.body.click();
    // They are told of one by one, a moment later.
    for (let n = 0; n < 100 && wanted.some((rule) => !refused.has(rule)); n += 1) {
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    const through = globalThis.ran === true || document.querySelector("body > b") !== null;
    return { refused: [...refused].sort(), through };
  }, REFUSED);

for (const [name, address] of [["site", undefined], ["single file", singleFile]]) {
  test(`the policy of the ${name} refuses script, markup and addresses that are not ours`, async () => {
    const { context } = await guarded(phone, address);
    const page = await started(context, address);
    assert.deepEqual(await tried(page), { refused: REFUSED, through: false });
    await context.close();
  });
}

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
