// Redraws the committed pictures: the icons, and the page for the README.

import assert from "node:assert/strict";
import { mkdir, stat } from "node:fs/promises";
import { fileURLToPath } from "node:url";

import { browser, desk, phone, serve } from "./support.mjs";
import { writeIcons } from "./icons.mjs";

const folder = fileURLToPath(new URL("../../www/shots/", import.meta.url));
/** The most a picture may weigh, so that the repository stays light. */
const MOST = 210_000;

const cure = (page) => page.click("button.solid");
const hands = async (page) => {
  await cure(page);
  await page.getByRole("button", { name: "Hands", exact: true }).first().click();
};

/** Name, size, and how the page comes to show it. */
const pictures = [
  ["phone-cured", { ...phone, deviceScaleFactor: 1.3 }, cure],
  ["desk-hands", { ...desk, deviceScaleFactor: 0.7 }, hands],
];

async function shoot() {
  await writeIcons();
  await mkdir(folder, { recursive: true });
  const site = await serve();
  const chromium = await browser();
  try {
    for (const [name, size, reach] of pictures) {
      const context = await chromium.newContext({ ...size, reducedMotion: "reduce" });
      const page = await context.newPage();
      await page.goto(site.url);
      await page.waitForSelector("html[data-core=ready]");
      await reach(page);
      // The drawing settles once its scale has come to rest, figures once read.
      await page.waitForTimeout(400);
      await page.getByText("reading the table…").waitFor({ state: "detached" });
      const path = `${folder}${name}.png`;
      await page.screenshot({ path });
      const { size: bytes } = await stat(path);
      assert.ok(bytes < MOST, `${name}.png weighs ${bytes} of ${MOST} bytes`);
      await context.close();
    }
  } finally {
    await chromium.close();
    site.stop();
  }
}

await shoot();
