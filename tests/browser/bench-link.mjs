// Measures how long a client waits for the picture of a link on a phone that
// never saw the planner: a slow network and a slow processor, as the browser's
// own throttles make them.

import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { extname } from "node:path";
import { gzipSync } from "node:zlib";

import { share } from "./measure.mjs";
import { dist, phone } from "./support.mjs";

const TYPES = {
  ".css": "text/css",
  ".html": "text/html",
  ".js": "text/javascript",
  ".json": "application/json",
  ".svg": "image/svg+xml",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
};

/** Serves the built page compressed, as a host does. */
async function compressed() {
  const kept = new Map();
  const server = createServer(async ({ url }, response) => {
    const name = url.split(/[?#]/)[0].slice(1) || "index.html";
    try {
      if (!kept.has(name)) kept.set(name, gzipSync(await readFile(new URL(name, dist)), { level: 9 }));
      const type = TYPES[extname(name)] ?? "application/octet-stream";
      response.writeHead(200, { "content-type": type, "content-encoding": "gzip" });
      response.end(kept.get(name));
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise((begun) => server.listen(0, "127.0.0.1", begun));
  return { url: `http://127.0.0.1:${server.address().port}/`, stop: () => server.close() };
}

const VISITS = 3;
/** 1.6 Mbit/s each way, 150 ms there and back, a quarter of the processor. */
const BYTES = 1.6e6 / 8;
const LATENCY = 150;
const SLOWED = 4;

/** The link of the table of the first visit. */
async function made(chromium, url) {
  const context = await chromium.newContext(phone);
  const page = await context.newPage();
  await page.goto(url);
  await page.waitForSelector("html[data-core=ready]");
  await page.locator(".first .solid").tap();
  await page.getByRole("button", { name: "Papers", exact: true }).tap();
  await page.getByRole("button", { name: "Make the link" }).tap();
  const link = await page.locator("input.link").inputValue();
  await context.close();
  return link;
}

/** How long until the picture, and until all is ready. */
export async function link(chromium) {
  const { url, stop } = await compressed();
  const address = await made(chromium, url);
  const [picture, ready] = [[], []];
  for (let visit = 0; visit < VISITS; visit += 1) {
    const context = await chromium.newContext({ ...phone, serviceWorkers: "block" });
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    await session.send("Network.enable");
    await session.send("Network.emulateNetworkConditions", {
      offline: false, latency: LATENCY, downloadThroughput: BYTES, uploadThroughput: BYTES,
    });
    await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
    // Things drawn, on the screen, in the page's own time from its first request.
    await page.addInitScript(() => {
      const look = () => {
        const early = document.querySelector("#early img");
        const drawn = document.querySelector("svg [data-key^=item-]");
        const there = (early?.complete && early.naturalWidth > 0) || drawn?.getBoundingClientRect().width > 0;
        if (there) globalThis.seen ??= performance.now();
        if (document.documentElement.dataset.core === "ready") globalThis.started ??= performance.now();
        else requestAnimationFrame(look);
      };
      requestAnimationFrame(look);
    });
    await page.goto(address);
    await page.waitForFunction(() => globalThis.started !== undefined, undefined, { timeout: 60_000 });
    const times = await page.evaluate(() => [globalThis.seen, globalThis.started]);
    picture.push(times[0]);
    ready.push(times[1]);
    await context.close();
  }
  stop();
  const row = (what, all) => ({ what, slowed: SLOWED, figure: share(all, 0.5), unit: "ms" });
  return [
    row("link/supper, never visited, until the picture, median", picture),
    row("link/supper, never visited, until all is ready, median", ready),
  ];
}
