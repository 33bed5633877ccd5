// Draws the home-screen icons from static/icon.svg.

import { readFile, writeFile } from "node:fs/promises";
import { browser } from "./support.mjs";

const folder = new URL("../../static/", import.meta.url);

/** Every committed icon: its edge in px, and whether the system crops it to its own shape. */
export const icons = [
  { name: "icon-180.png", edge: 180, cropped: true },
  { name: "icon-192.png", edge: 192, cropped: false },
  { name: "icon-512.png", edge: 512, cropped: false },
  { name: "icon-mask-512.png", edge: 512, cropped: true },
];

/** One icon as PNG bytes; a cropped one fills its square, with a margin about the drawing. */
async function drawn(page, svg, { edge, cropped }) {
  const filled = svg.replace('rx="96"', 'rx="0"');
  const inner = (cropped ? filled : svg).replace("<svg ", `<svg width="${edge}" height="${edge}" `);
  await page.setViewportSize({ width: edge, height: edge });
  await page.setContent(`<body style="margin:0;line-height:0">${inner}</body>`);
  return page.screenshot({ omitBackground: true });
}

/** Draws all icons anew and returns their bytes by name. */
export async function drawIcons() {
  const svg = await readFile(new URL("icon.svg", folder), "utf8");
  const chromium = await browser();
  try {
    const page = await chromium.newPage();
    const made = new Map();
    for (const icon of icons) made.set(icon.name, await drawn(page, svg, icon));
    return made;
  } finally {
    await chromium.close();
  }
}

/** Writes all icons into static/. */
export async function writeIcons() {
  for (const [name, bytes] of await drawIcons()) await writeFile(new URL(name, folder), bytes);
}
