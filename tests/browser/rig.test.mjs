// Arm and stand in the camera's place: put down, weighed, drawn from above and
// from the side, cured, taken back; and what to take care of, on screen and on paper.

import assert from "node:assert/strict";
import { test } from "node:test";

import { kinds, setUp } from "./setup.mjs";
import { assertAccessible, assertClean, desk, painted, phone } from "./support.mjs";

const at = setUp();

/** At work in the camera's place, at the supper or another laid table. */
async function camera(context, title) {
  const page = await at.started(context);
  await page.locator(".first .solid").click();
  if (title !== undefined) {
    await page.getByRole("button", { name: "Papers", exact: true }).click();
    await page.getByRole("button", { name: "Lay a new table" }).click();
    await page.getByRole("list", { name: "Laid tables to start from" }).getByRole("button", { name: title }).click();
    await page.getByRole("region", { name: "Findings" }).waitFor();
  }
  await page.getByRole("button", { name: "Camera & light", exact: true }).click();
  await page.getByRole("button", { name: "Arm and stand", exact: true }).click();
  return page;
}

/** Whether any line of it is drawn. */
const drawn = async (group) => (await group.locator("path[d]").count()) > 0;

for (const [name, options] of kinds([
  ["phone", phone],
  ["desk in the dark", { ...desk, colorScheme: "dark" }],
])) {
  test(`a stand is put down, overloaded and taken back on a ${name}`, async () => {
    const { context, faults } = await at.guarded({ ...options, reducedMotion: "reduce" });
    const page = await camera(context, "Citrus breakfast");
    await page.getByText("It waits for the place of the mast").waitFor();
    const stand = page.locator('.picture [data-key="mast-0"]');
    assert.equal(await drawn(stand), false, "none yet");
    const side = page.getByRole("img", { name: "Camera, stand and light from the side" });
    const lines = () =>
      side.evaluate((svg) => [...svg.querySelectorAll("path")].map((path) => path.getAttribute("d")).join(" "));
    const bare = await lines();
    await page.getByRole("button", { name: "Put the stand beside the table" }).click();
    await page.getByText(/The arithmetic leaves the rig a margin|Nothing in the arithmetic/).waitFor();
    assert.notEqual(await lines(), bare, "drawn from the side");
    assert.equal(await drawn(stand), true, "drawn from above");
    for (let n = 0; n < 12; n += 1) {
      await page.getByRole("button", { name: /^Camera, lens and head .* heavier$/ }).click();
    }
    await page.getByText(/under 2, towards|tips over towards/).first().waitFor();
    await page.getByRole("button", { name: /^Bag .* heavier$/ }).click();
    await page.getByRole("group", { name: "The bag hangs" }).getByRole("button", { name: "on the rear legs" }).click();
    await page.getByRole("button", { name: "Say where you stand" }).click();
    await page.getByRole("button", { name: /^Yourself .* left$/ }).click();
    await assertAccessible(page);
    // Steps taken quickly after each other are one.
    const before = page.getByRole("button", { name: "Put the stand beside the table" });
    while (!(await before.isVisible())) {
      await page.getByRole("button", { name: "Undo", exact: true }).click();
    }
    await page.getByText("It waits for the place of the mast").waitFor();
    assert.equal(await lines(), bare, "as it was");
    await page.getByRole("button", { name: "Table", exact: true }).click();
    await page.waitForFunction(() => document.querySelector('.picture [data-key="mast-0"]') === null);
    assertClean(faults);
    await context.close();
  });
}

test("what to take care of is said where it concerns and on paper", async () => {
  const { context, faults } = await at.guarded({ ...phone, reducedMotion: "reduce" });
  const page = await camera(context);
  const care = page.getByRole("list", { name: "Take care" });
  assert.match(await care.innerText(), /steel tether/, "by the camera");
  await page.getByRole("button", { name: "Papers", exact: true }).click();
  await painted(page);
  assert.match(await care.innerText(), /not for eating/, "by the papers");
  await page.emulateMedia({ media: "print" });
  const text = await page.locator(".printed").innerText();
  for (const words of [/steel tether/, /flame/, /not for eating/, /local food rules/]) {
    assert.match(text, words, "printed");
  }
  assertClean(faults);
  await context.close();
});
