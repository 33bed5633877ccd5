// What was done in the other engines, as tests/reports/engines.md.

import { execFileSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";

import { root } from "../support.mjs";

/** Writes the report, from each engine's name, version and steps. */
export function write(engines) {
  const commit = execFileSync("git", ["rev-parse", "--short", "HEAD"], { cwd: root }).toString().trim();
  const part = ({ name, version, steps }) => `## ${name} ${version}

| step | what it showed |
|---|---|
${steps.map(([what, told]) => `| ${what} | ${told} |`).join("\n")}
`;
  const text = `# The main job in other engines

Written by \`cargo xtask deep engines\` on ${new Date().toISOString().slice(0, 10)}, at ${commit}.

Each engine did every step by pointer and keys, on a screen as wide as a phone's
or as narrow as its window gets: from a server, and as the single file from a
disk. Things are moved with a finger in Firefox and with the mouse in WebKitGTK.

${engines.map(part).join("\n")}`;
  writeFileSync(join(root, "tests/reports/engines.md"), text);
}
