// A newer page put where an older one was fetched from.

import assert from "node:assert/strict";
import { cp, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

import { dist, serve } from "./support.mjs";

/** Runs with a copy of the built page on a server of its own, and what puts a newer one in its place. */
export async function renewable(run) {
  const folder = await mkdtemp(join(tmpdir(), "overspread-"));
  await cp(fileURLToPath(dist), folder, { recursive: true });
  const { stop, url } = await serve(folder);
  try {
    await run(url, () => publish(folder));
  } finally {
    stop();
    await rm(folder, { recursive: true });
  }
}

/** Puts a newer page in place of the one in `folder`: another title, another revision. */
async function publish(folder) {
  const index = join(folder, "index.html");
  const page = await readFile(index, "utf8");
  await writeFile(index, page.replace(/<title>[^<]*/, "<title>Newer"));
  const worker = join(folder, "service-worker.js");
  const script = await readFile(worker, "utf8");
  const renewed = script.replace(/(["'`])[0-9a-f]{16}\1/, '"0123456789abcdef"');
  assert.notEqual(renewed, script, "the service worker names its revision");
  await writeFile(worker, renewed);
}
