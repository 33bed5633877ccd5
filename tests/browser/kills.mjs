// Kills a page at work at random moments, many times, and writes down how often
// the act in hand was kept; any other outcome ends it, with the seed to repeat it.
//
// `cargo xtask deep kills --kills 200 --seed 1`

import { writeFile } from "node:fs/promises";
import { join } from "node:path";

import { killing, WITHIN } from "./killing.mjs";
import { root, serve } from "./support.mjs";

const [count, seed] = process.argv.slice(2).map(Number);
console.log(`${count} kills of seed ${seed}`);
const site = await serve();
const tell = ({ n, kind, after, whole, ended, came }) =>
  console.log(`${String(n).padStart(4)} ${whole ? "browser" : "tab    "} ${String(after).padStart(3)} ms ${ended ? "after" : "into "} ${kind.padEnd(8)} ${came}`);
const all = await killing({ url: site.url, count, seed, tell }).finally(() => site.stop());

const part = WITHIN / 3;
const alike = (name, of) =>
  [...new Set(all.map(of))].sort().map((value) => row(name(value), all.filter((kill) => of(kill) === value)));
const row = (name, kills) => {
  const came = (what) => kills.filter((kill) => kill.came === what).length;
  return `| ${name} | ${kills.length} | ${came("kept")} | ${came("lost")} | ${came("nothing")} |`;
};
const text = `# Tabs and browsers killed at work

Written by \`cargo xtask deep kills --kills ${count} --seed ${seed}\`: acts drawn at random, and at a random moment up to ${WITHIN} ms after one the page's process is killed, or with it the whole browser. After each the page was opened again and nothing was reported; the layout was as before the act in hand or as after it, to the byte, one step from each other by undo and redo; all else that is kept had changed by that act at most. Any other outcome ends the run.

Where an act was only sent, the page may never have begun it; that counts as not kept. A killed browser leaves what it has handed to the system; a phone whose power fails may lose the last acts, as nothing waits for the disk.

| killed | times | act in hand kept | not | it changed nothing |
|---|---|---|---|---|
${[
  ...alike((whole) => (whole ? "the whole browser" : "the tab"), ({ whole }) => whole),
  ...[false, true].flatMap((ended) =>
    [0, 1, 2].map((third) =>
      row(
        `${third * part} to ${(third + 1) * part} ms after an act was ${ended ? "taken in" : "sent"}`,
        all.filter((kill) => kill.ended === ended && Math.floor(kill.after / part) === third),
      ),
    ),
  ),
  ...alike((kind) => kind, ({ kind }) => kind),
  row("all", all),
].join("\n")}
`;
await writeFile(join(root, "tests/reports/kills.md"), text);
console.log(text);
