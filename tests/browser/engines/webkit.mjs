// WebKitGTK, driven through its own driver, on a screen that nobody sees.

import { once } from "node:events";
import { createServer } from "node:net";
import { setTimeout as pause } from "node:timers/promises";

import { screen, stay } from "../screen.mjs";
import { require } from "../support.mjs";

const { Builder, Capabilities } = require("selenium-webdriver");

/** How often the driver is asked whether it is up, and how long between, ms. */
const [TRIES, BETWEEN] = [100, 100];

/** The small browser's window, which has a bar of its own above the page. */
const WINDOW = { width: 390, height: 900 };

async function freePort() {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = server.address();
  server.close();
  await once(server, "close");
  return port;
}

/** Starts a screen for WebKitGTK; `visitor` comes as somebody whom the page never saw. */
export async function webkit() {
  const { display, stop } = await screen();
  // All that was started, whatever became of it.
  const stops = [stop];
  const engine = { version: "", visitor, stop: () => Promise.all(stops.map((end) => end())) };
  async function visitor() {
    const driver = await session(display, stops);
    engine.version = (await driver.getCapabilities()).getBrowserVersion();
    return acts(driver);
  }
  return engine;
}

/** A driver and a browser of their own, so that nothing is shared with another visitor. */
async function session(display, stops) {
  const port = await freePort();
  const { stop } = stay("WebKitWebDriver", [`--port=${port}`], {
    stdio: "ignore",
    // Nothing here can draw in layers of hardware.
    env: { ...process.env, DISPLAY: display, WEBKIT_DISABLE_COMPOSITING_MODE: "1" },
  });
  stops.push(stop);
  const address = `http://127.0.0.1:${port}`;
  await up(`${address}/status`);
  const driver = await new Builder()
    .usingServer(address)
    .withCapabilities(new Capabilities().setBrowserName("MiniBrowser"))
    .build();
  await driver.manage().window().setRect({ x: 0, y: 0, ...WINDOW });
  return driver;
}

async function up(address) {
  for (let time = 0; ; time += 1) {
    try {
      if ((await fetch(address)).ok) return;
    } catch (error) {
      if (time === TRIES) throw new Error("WebKitWebDriver does not answer", { cause: error });
    }
    await pause(BETWEEN);
  }
}

function acts(driver) {
  const at = ([x, y]) => ({ x: Math.round(x), y: Math.round(y), duration: 20 });
  return {
    open: (address) => driver.get(address),
    reload: () => driver.navigate().refresh(),
    async run(text) {
      const { value, error } = await driver.executeAsyncScript(`
        const done = arguments[0];
        Promise.resolve().then(() => (${text})).then(
          (value) => done({ value }), (error) => done({ error: String(error) }));`);
      if (error != null) throw new Error(error);
      return value;
    },
    click: (x, y) => driver.actions().move(at([x, y])).press().release().perform(),
    /** With the mouse, from the first place to the last. */
    async drag([from, ...rest]) {
      let way = driver.actions().move(at(from)).press();
      for (const place of rest) way = way.move(at(place));
      await way.release().perform();
    },
    type: (text) => driver.actions().sendKeys(text).perform(),
    // Its driver tells nothing of them.
    faults: async () => [],
    close: () => driver.quit(),
  };
}
