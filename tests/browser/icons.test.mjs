// The committed icons are the drawing in static/icon.svg, and the manifest
// names them with their true sizes.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

import { drawIcons, icons } from "./icons.mjs";

const folder = new URL("../../static/", import.meta.url);

test("icons are drawn from the current icon.svg", async () => {
  for (const [name, bytes] of await drawIcons()) {
    const kept = await readFile(new URL(name, folder));
    assert.ok(kept.equals(bytes), `${name} is stale: run \`cargo xtask shots\``);
  }
});

test("the manifest names icons that are there, at their size", async () => {
  const manifest = JSON.parse(await readFile(new URL("manifest.webmanifest", folder), "utf8"));
  for (const { src, sizes } of manifest.icons) {
    const bytes = await readFile(new URL(src, folder));
    if (!src.endsWith(".png")) continue;
    // Width and height stand at bytes 16 and 20 of a PNG (ISO/IEC 15948, IHDR).
    const size = `${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`;
    assert.equal(size, sizes, src);
    assert.ok(icons.some(({ name }) => name === src), `${src} is drawn by us`);
  }
});
