// The engines that are tried, each started before its tests and stopped after.

import { after, before, describe } from "node:test";

import { serve } from "../support.mjs";
import { firefox } from "./firefox.mjs";
import { Page } from "./page.mjs";
import { webkit } from "./webkit.mjs";

const ENGINES = [
  ["Firefox", firefox],
  ["WebKitGTK", webkit],
];

/**
 * Runs `tests` for each engine, with the site on a local server: `site.url` says
 * where, `visitor` opens a page in front of somebody new, and `version` is known
 * once one has come.
 */
export function inEach(tests) {
  for (const [name, start] of ENGINES) {
    describe(name, () => {
      const site = { url: "" };
      const open = [];
      let [engine, served] = [];
      before(async () => {
        served = await serve();
        site.url = served.url;
        engine = await start();
      });
      after(async () => {
        try {
          for (const page of open) await page.close();
        } finally {
          await engine?.stop();
          await served?.stop();
        }
      });
      const visitor = async () => {
        const page = new Page(await engine.visitor());
        open.push(page);
        return page;
      };
      tests({ name, site, visitor, version: () => engine.version });
    });
  }
}
