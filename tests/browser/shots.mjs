// Redraws the committed pictures: the icons, and the page for the README.

import { mkdir } from "node:fs/promises";
import { fileURLToPath } from "node:url";

import { browser, desk, phone, serve } from "./support.mjs";
import { writeIcons } from "./icons.mjs";

const folder = fileURLToPath(new URL("../../www/shots/", import.meta.url));

async function shoot() {
  await writeIcons();
  await mkdir(folder, { recursive: true });
  const site = await serve();
  const chromium = await browser();
  try {
    for (const [size, name] of [[phone, "phone"], [desk, "desk"]]) {
      for (const colorScheme of ["light", "dark"]) {
        const context = await chromium.newContext({ ...size, colorScheme, reducedMotion: "reduce" });
        const page = await context.newPage();
        await page.goto(site.url);
        await page.waitForSelector("html[data-core=ready]");
        await page.screenshot({ path: `${folder}${name}-${colorScheme}.png` });
        await context.close();
      }
    }
  } finally {
    await chromium.close();
    site.stop();
  }
}

await shoot();
