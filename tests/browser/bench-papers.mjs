// Measures how long each paper of the demonstration table takes: until its first
// page is on the screen, and until its PDF is saved.

import { calibrate } from "./measure.mjs";
import { phone } from "./support.mjs";

export async function papers(chromium, url, slowed) {
  const context = await chromium.newContext({ ...phone, acceptDownloads: true, serviceWorkers: "block" });
  const page = await context.newPage();
  await page.goto(url);
  await page.waitForSelector("html[data-core=ready]");
  await page.locator(".first .solid").tap();
  await page.getByRole("button", { name: "Papers", exact: true }).tap();
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: slowed });
  const calibration = await page.evaluate(calibrate);
  const part = page.getByRole("region", { name: "Papers to print" });
  const names = await part.getByRole("group").nth(1).getByRole("button").allInnerTexts();
  if (names.length < 9) throw new Error(`${names.length} papers`);
  const rows = [];
  for (const name of names) {
    // In the page's own time, from the touch to the frame that shows it.
    const shown = await page.evaluate(async (wanted) => {
      const all = [...document.querySelectorAll("button")];
      const start = performance.now();
      all.find((button) => button.textContent === wanted).click();
      for (;;) {
        await new Promise(requestAnimationFrame);
        const image = document.querySelector(".pages img");
        if (image?.alt.startsWith(`${wanted}, page 1`) && image.complete) return performance.now() - start;
      }
    }, name);
    const start = performance.now();
    const file = page.waitForEvent("download");
    await part.getByRole("button", { name: "Save as PDF", exact: true }).tap();
    await file;
    rows.push([name, shown, performance.now() - start]);
  }
  await context.close();
  const row = (what, figure) => ({ what, figure, unit: "ms", calibration });
  // The first one waits for the module that makes them.
  const [first, ...later] = rows;
  return [
    row(`papers/${first[0]}, PDF with its module fetched`, first[2]),
    ...rows.map(([name, shown]) => row(`papers/${name}, seen`, shown)),
    ...later.map(([name, , saved]) => row(`papers/${name}, PDF`, saved)),
  ];
}
