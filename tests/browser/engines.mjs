// The page in the two other engines, Firefox and WebKitGTK, from a server and
// as one file from a disk: it starts, and the first remedy does what it says.

import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { createServer } from "node:net";

import { require, serve, singleFile } from "./support.mjs";

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
  const asks = By.css('[aria-label="What this table asks for"]');
  const before = percent(await driver.wait(until.elementLocated(asks), PATIENCE).getText());
  await driver.findElement(By.css('[aria-label="What this table asks for"] button')).click();
  const changed = By.css('[aria-label="What changed"] .figure');
  const after = percent(await driver.wait(until.elementLocated(changed), PATIENCE).getText());
  assert.ok(after < before, `the remedy lowers ${before}% and left ${after}%`);
  return `${before}% to ${after}%`;
}

const site = await serve();
try {
  for (const [name, open] of [["Firefox", inFirefox], ["WebKit", inWebKit]]) {
    const { driver, stop } = await open();
    try {
      for (const address of [site.url, singleFile]) {
        console.log(`${name}, ${new URL(address).protocol} ${await firstCure(driver, address)}`);
      }
    } finally {
      await stop();
    }
  }
} finally {
  site.stop();
}
