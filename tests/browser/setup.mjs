// What the tests of one file share: the site on a local server, a browser, and
// pages in it that note everything they should not do.

import { after, before } from "node:test";

import { browser, guarded, phone, serve } from "./support.mjs";

/** Whether everything is run, however long it takes, as `cargo xtask deep page` does. */
export const long = process.env.OVERSPREAD_LONG === "1";

/** The kinds of screen a test runs on: all in a long run, otherwise the first few. */
export const kinds = (all, few = 1) => (long ? all : all.slice(0, few));

/**
 * Serves the built page and starts a browser before the tests of a file, and
 * stops both after them. `site.url` says where; `guarded` makes a context as in
 * `support.mjs`; `started` opens a page in one and waits until it can be used.
 */
export function setUp() {
  const site = { url: "", stop() {} };
  let chromium;
  before(async () => {
    Object.assign(site, await serve());
    chromium = await browser();
  });
  after(async () => {
    await chromium?.close();
    site.stop();
  });
  return {
    site,
    guarded: (options = phone, url = site.url) => guarded(chromium, url, options),
    async started(context, url = site.url) {
      const page = await context.newPage();
      await page.goto(url);
      await ready(page);
      return page;
    },
  };
}

/** Waits until the page can be used. */
export const ready = (page) => page.waitForSelector("html[data-core=ready]");
