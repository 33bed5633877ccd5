// Firefox, driven by the protocol it speaks itself: no driver stands between.

import { require } from "../support.mjs";

const puppeteer = require("puppeteer-core");

const PREFERENCES = {
  // Puts a page from a disk under the rules a visitor's browser has.
  "security.fileuri.strict_origin_policy": true,
  // A finger comes down as on a phone.
  "dom.w3c_touch_events.enabled": 1,
};

/** Starts Firefox; `visitor` comes as somebody whom the page never saw. */
export async function firefox() {
  const browser = await puppeteer.launch({
    browser: "firefox",
    executablePath: process.env.FIREFOX ?? "/usr/bin/firefox-esr",
    extraPrefsFirefox: PREFERENCES,
  });
  const version = (await browser.version()).split("/").at(-1);
  return { version, visitor: () => visitor(browser), stop: () => browser.close() };
}

async function visitor(browser) {
  const context = await browser.createBrowserContext();
  const page = await context.newPage();
  await page.setViewport({ width: 390, height: 844, deviceScaleFactor: 2 });
  const faults = [];
  page.on("pageerror", (error) => faults.push(`uncaught: ${error.message}`));
  page.on("console", (message) => {
    if (message.type() === "error") faults.push(`console: ${message.text()}`);
  });
  return {
    faults: async () => faults,
    open: (address) => page.goto(address),
    reload: () => page.reload(),
    run: (text) => page.evaluate(text),
    click: (x, y) => page.mouse.click(x, y),
    /** With a finger, from the first place to the last. */
    async drag([from, ...rest]) {
      const finger = await page.touchscreen.touchStart(...from);
      for (const place of rest) await finger.move(...place);
      await finger.end();
    },
    type: (text) => page.keyboard.type(text),
    /** What a printer would be given. */
    printed: async () => Buffer.from(await page.pdf({ format: "A4" })),
    close: () => context.close(),
  };
}
