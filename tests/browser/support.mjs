// What every browser test starts from: the built page on a local server, a
// browser, a phone, and the rule that nothing is fetched from anywhere else.

import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";

// The packages are those of the page.
export const require = createRequire(new URL("../../www/package.json", import.meta.url));
const { chromium } = require("playwright-core");

export const root = fileURLToPath(new URL("../../", import.meta.url));
export const dist = new URL("../../dist/", import.meta.url);

/** The page in one file, as opened from a disk. */
export const singleFile = new URL("overspread.html", dist).href;

/** A phone held upright in one hand. */
export const phone = {
  viewport: { width: 390, height: 844 },
  deviceScaleFactor: 2,
  hasTouch: true,
  isMobile: true,
};

/** A desk. */
export const desk = { viewport: { width: 1280, height: 800 } };

/**
 * Serves a directory (the built page unless another is named) and returns
 * `{ url, stop }`; awaited, `stop` has ended it. `cargo xtask test` serves the built page itself and says
 * where; a test run by hand starts its own server.
 */
export async function serve(directory = undefined) {
  const running = process.env.OVERSPREAD_URL;
  if (directory === undefined && running !== undefined) return { url: running, stop() {} };
  const folder = directory ?? fileURLToPath(dist);
  const task = process.env.OVERSPREAD_XTASK;
  const [program, words] = task === undefined ? ["cargo", ["xtask"]] : [task, []];
  const server = spawn(program, [...words, "serve", "--port", "0", "--dir", folder], {
    cwd: root,
    stdio: ["ignore", "pipe", "inherit"],
  });
  const url = await new Promise((resolve, reject) => {
    server.once("error", reject);
    server.once("exit", (code) => reject(new Error(`the server ended with ${code}`)));
    createInterface({ input: server.stdout }).once("line", resolve);
  });
  const ended = new Promise((resolve) => server.once("exit", resolve));
  const stop = () => {
    server.kill();
    return ended;
  };
  return { url, stop };
}

/**
 * Parts of Chromium that are off: two pages of its own window, a renderer each for
 * every context, and, as this takes its place, what Playwright's list has off that
 * a test could notice.
 */
const OFF = [
  "WebUIOmniboxPopup", "WebUIOmniboxAimPopup", "AvoidUnnecessaryBeforeUnloadCheckSync",
  "DestroyProfileOnBrowserClose", "HttpsUpgrades", "HttpsFirstBalancedModeAutoEnable", "LensOverlay",
  "MediaRouter", "PaintHolding", "ThirdPartyStoragePartitioning", "OptimizationHints",
  "NetworkTimeServiceQuerying", "AimEnabled", "PreconnectToSearch",
];

/** How Chromium is started. No name outside this machine resolves. */
export const launching = {
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: [
    "--no-sandbox",
    "--disable-dev-shm-usage",
    `--disable-features=${OFF.join(",")}`,
    "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
  ],
};
export const browser = (options = {}) => chromium.launch({ ...launching, ...options });

/**
 * A fresh context in which every request off our origin is refused and noted,
 * and so is what the page's own content security policy refuses, every error
 * the page throws and every error on its console. Check with `assertClean`.
 */
export async function guarded(chromiumBrowser, url, options = phone) {
  const context = await chromiumBrowser.newContext(options);
  const faults = [];
  const { origin, protocol } = new URL(url);
  const ours = (address) =>
    ["blob:", "data:"].includes(address.protocol) ||
    (protocol === "file:" ? address.href.split(/[?#]/)[0] === url : address.origin === origin);
  await context.route(
    (address) => !ours(address),
    (route) => {
      faults.push(`foreign request: ${route.request().url()}`);
      return route.abort();
    },
  );
  await context.exposeFunction("noteRefusal", (text) => faults.push(`refused by policy: ${text}`));
  await context.addInitScript(() => {
    addEventListener("securitypolicyviolation", (event) => {
      globalThis.noteRefusal(`${event.violatedDirective} ${event.blockedURI}`);
    });
  });
  context.on("weberror", (error) => faults.push(`uncaught: ${error.error().message}`));
  context.on("console", (message) => {
    if (message.type() === "error") faults.push(`console: ${message.text()}`);
  });
  return { context, faults };
}

/** Fails when a guarded context noted anything, above all a request to another origin. */
export function assertClean(faults) {
  assert.deepEqual(faults, [], "the page asked another origin, broke its policy or threw");
}

/** The same for requests alone, where a test provokes errors of its own. */
export function assertNoForeignRequests(faults) {
  const foreign = faults.filter((fault) => fault.startsWith("foreign") || fault.startsWith("refused"));
  assert.deepEqual(foreign, [], "the page asked another origin");
}

/** What axe-core calls the rules of WCAG 2.2 A and AA. */
const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

/** What axe-core finds against WCAG 2.2 A and AA, or `also`, a readable line each. */
export async function accessibility(page, { within = undefined, except = [], also = [] } = {}) {
  // Handed over the debugging port, so the page's policy need not allow it.
  await page.evaluate(await axeSource());
  const found = await page.evaluate(
    ([selector, off, runOnly]) =>
      globalThis.axe.run(selector ?? document, {
        runOnly,
        rules: Object.fromEntries(off.map((rule) => [rule, { enabled: false }])),
        resultTypes: ["violations"],
      }),
    [within, except, [...RULES, ...also]],
  );
  return found.violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map((node) => node.target).join(" | ")}`,
  );
}

/** Fails where that finds anything. */
export async function assertAccessible(page, options = {}) {
  assert.deepEqual(await accessibility(page, options), [], "accessibility faults");
}

let axe;
function axeSource() {
  axe ??= readFile(require.resolve("axe-core/axe.min.js"), "utf8");
  return axe;
}

/**
 * Waits until what was pressed is painted: a place comes after its mark, its
 * drawing after that, and the parts of a long one each in a frame of its own.
 */
export const painted = (page) =>
  page.evaluate(async () => {
    let still = 0;
    const watch = new MutationObserver(() => (still = 0));
    watch.observe(document.body, { subtree: true, childList: true, attributes: true });
    // Something may never rest: that is told of otherwise.
    for (let n = 0; n < 120 && still < 4; n += 1) {
      still += 1;
      await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
    }
    watch.disconnect();
  });

/** Waits until the service worker has kept the page, so that it opens without a network. */
export async function keptForOffline(page) {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    if (navigator.serviceWorker.controller !== null) return;
    await new Promise((resolve) => {
      navigator.serviceWorker.addEventListener("controllerchange", resolve, { once: true });
    });
  });
}
