// What must work in Firefox and WebKitGTK each time: the first cure, a link that
// a client opens and remarks on, and the page without a network after one visit.

import assert from "node:assert/strict";
import { test } from "node:test";
import { fileURLToPath } from "node:url";

import { dist, serve } from "../support.mjs";
import { clientSees, cureAmongFindings, firstCure, link, remarkOnHero } from "./job.mjs";
import { inEach } from "./setup.mjs";

/** The demonstration table as a client sees it. */
const SUPPER = { title: "Harbour supper", crops: 4 };

/** Waits until the service worker answers for the page and has kept all its files. */
async function kept(page) {
  await page.until("the service worker answers for the page", async () => {
    await navigator.serviceWorker.ready;
    return navigator.serviceWorker.controller !== null;
  });
  return page.until("its files are kept, and those of papers", async () => {
    const [name] = await caches.keys();
    const names = (await (await caches.open(name)).keys()).map(({ url }) => new URL(url).pathname);
    const has = (like) => names.some((each) => like.test(each));
    return [/index\.html$/, /core-.*wasm$/, /outputs-.*wasm$/, /outputs-.*js$/].every(has) && names.length;
  });
}

inEach(({ site, visitor }) => {
  test("the first cure, and a link of it that a client opens and remarks on", async () => {
    const page = await visitor();
    await page.open(site.url);
    await firstCure(page);
    const address = await link(page);
    await page.assertClean();
    const client = await visitor();
    await clientSees(client, address, SUPPER);
    await remarkOnHero(client);
    await client.assertClean();
  });

  test("after one visit the page opens and cures with the server stopped", async () => {
    const own = await serve(fileURLToPath(dist));
    try {
      const page = await visitor();
      await page.open(own.url);
      assert.ok((await kept(page)) > 4, "files are kept");
      await own.stop();
      await assert.rejects(fetch(own.url), "nothing is served any more");
      await page.open(own.url);
      await cureAmongFindings(page);
      await page.assertClean();
    } finally {
      own.stop();
    }
  });
});
