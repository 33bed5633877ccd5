// A kill of the tab and one of the whole browser at set moments: what is
// found after each is the layout before or after the act in hand.

import assert from "node:assert/strict";
import { test } from "node:test";

import { killing } from "./killing.mjs";
import { setUp } from "./setup.mjs";

const { site } = setUp();

test("a killed tab or browser loses at most the act in hand", async () => {
  const kinds = ["nudge", "burst"];
  const all = await killing({ url: site.url, count: kinds.length, seed: 1, kind: (n) => kinds[n - 1], whole: (n) => n === kinds.length });
  // A burst has ended before it is killed.
  assert.ok(all.some(({ came }) => came === "kept"), "not every act was lost");
});
