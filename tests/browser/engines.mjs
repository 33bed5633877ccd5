// The page in the two other engines, Firefox and WebKitGTK, from a server and
// as one file from a disk: it starts, and the first remedy does what it says.
// What was done is written to tests/reports/engines.md.

import assert from "node:assert/strict";
import { execFileSync, spawn } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";

import { require, root, serve, singleFile } from "./support.mjs";

const { Builder, By, Capabilities, until } = require("selenium-webdriver");
const firefox = require("selenium-webdriver/firefox");

const PATIENCE = 30_000;

async function freePort() {
  const server = createServer().listen(0, "127.0.0.1");
  await new Promise((resolve) => server.once("listening", resolve));
  const { port } = server.address();
  await new Promise((resolve) => server.close(resolve));
  return port;
}

/** Starts a program that stays, and returns what ends it. */
function stay(program, words, environment = {}) {
  const child = spawn(program, words, {
    stdio: "ignore",
    env: { ...process.env, ...environment },
  });
  child.once("error", (error) => console.error(`${program}: ${error.message}`));
  return () => child.kill();
}

async function inFirefox() {
  const options = new firefox.Options()
    .addArguments("-headless")
    // Puts a page from a disk under the rules a visitor's browser has.
    .setPreference("security.fileuri.strict_origin_policy", true);
  const service = new firefox.ServiceBuilder(process.env.GECKODRIVER);
  const driver = await new Builder()
    .forBrowser("firefox")
    .setFirefoxOptions(options)
    .setFirefoxService(service)
    .build();
  return { driver, stop: () => driver.quit() };
}

async function inWebKit() {
  const display = `:${90 + Math.floor(Math.random() * 900)}`;
  const stopDisplay = stay("Xvfb", [display, "-screen", "0", "1280x1024x24"]);
  const port = await freePort();
  const stopDriver = stay("WebKitWebDriver", [`--port=${port}`], { DISPLAY: display });
  await new Promise((resolve) => setTimeout(resolve, 2000));
  const capabilities = new Capabilities().setBrowserName("MiniBrowser").set(
    "webkitgtk:browserOptions",
    { binary: "/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser", args: ["--automation"] },
  );
  const driver = await new Builder()
    .usingServer(`http://127.0.0.1:${port}`)
    .withCapabilities(capabilities)
    .build();
  const stop = async () => {
    await driver.quit();
    stopDriver();
    stopDisplay();
  };
  return { driver, stop };
}

/** The first share in a text, in percent. */
function percent(text) {
  const found = /(\d+)\s*%/.exec(text);
  assert.ok(found, `no share in "${text}"`);
  return Number(found[1]);
}

/** Opens the page, takes the first remedy and holds the page to its figure. */
async function firstCure(driver, address) {
  await driver.get(address);
  await driver.wait(until.elementLocated(By.css("html[data-core=ready]")), PATIENCE);
  const sentence = await driver.wait(until.elementLocated(By.css(".say .big")), PATIENCE);
  const before = percent(await sentence.getText());
  await driver.findElement(By.css(".say .solid")).click();
  const figure = await driver.wait(until.elementLocated(By.css(".was .figure")), PATIENCE);
  const after = percent(await figure.getText());
  assert.ok(after < before, `the remedy lowers ${before}% and left ${after}%`);
  return { before, after };
}

/** The report, from one row for each engine and place. */
function report(rows) {
  const commit = execFileSync("git", ["rev-parse", "--short", "HEAD"], { cwd: root }).toString().trim();
  const line = ({ engine, version, place, before, after }) =>
    `| ${engine} | ${version} | ${place} | ${before}% | ${after}% |`;
  return `# The first cure in other engines

Written by \`cargo xtask deep engines\` on ${new Date().toISOString().slice(0, 10)}, at ${commit}.

Each engine opened the page, read the first sentence, pressed its one button and
read the new figure; from a server, and as the single file from a disk.

| engine | version | opened from | outline lost before | after |
|---|---|---|---|---|
${rows.map(line).join("\n")}
`;
}

const site = await serve();
const rows = [];
try {
  for (const [engine, open] of [["Firefox", inFirefox], ["WebKitGTK", inWebKit]]) {
    const { driver, stop } = await open();
    try {
      const version = (await driver.getCapabilities()).getBrowserVersion();
      for (const [place, address] of [["a server", site.url], ["a disk", singleFile]]) {
        const figures = await firstCure(driver, address);
        rows.push({ engine, version, place, ...figures });
        console.log(JSON.stringify(rows.at(-1)));
      }
    } finally {
      await stop();
    }
  }
} finally {
  site.stop();
}
const reports = join(root, "tests/reports");
mkdirSync(reports, { recursive: true });
writeFileSync(join(reports, "engines.md"), report(rows));
