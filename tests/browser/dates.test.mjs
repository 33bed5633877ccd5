// Dates: a day on sale entered by touch gives the plan back from it; a figure and
// a food's months are changed and undone; the plan is saved as a calendar.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

import { setUp } from "./setup.mjs";
import { assertAccessible, assertClean, phone } from "./support.mjs";

const at = setUp();

test("the plan counts back from the day on sale", async () => {
  const { context, faults } = await at.guarded({ ...phone, acceptDownloads: true, reducedMotion: "reduce" });
  const page = await at.started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Papers", exact: true }).tap();
  const dates = page.getByRole("region", { name: "Dates" });
  await dates.getByText("Say when it is on sale or online").waitFor();
  const day = dates.getByLabel("On sale or online", { exact: true });
  await day.tap();
  // Digit by digit, so that years 2, 20 and 203 come before the one meant.
  await day.pressSequentially("1105203");
  assert.equal(await page.getByRole("alert").count(), 0, "nothing is refused meanwhile");
  await page.keyboard.press("1");
  await day.blur();
  const plan = dates.getByRole("list", { name: "From the brief to the day it is on sale" });
  const steps = plan.locator("li");
  await steps.nth(4).getByText("Saturday, 5 July 2031").waitFor();
  assert.match(await steps.nth(4).innerText(), /at a weekend/);
  await dates.getByText("shoot by 5 July 2031, in summer").waitFor();

  // A figure moves its day; the usual one and its source stay a tap away.
  assert.match(await steps.nth(2).innerText(), /Saturday, 28 June 2031/);
  await steps.nth(2).getByRole("button", { name: "Props pulled: a day more" }).tap();
  await steps.nth(2).getByText("Friday, 27 June 2031").waitFor();
  await steps.nth(2).getByText("As you say; the usual figure").tap();
  await steps.nth(2).getByText("Usual: 7 (common practice, no source).").waitFor();
  const shoot = steps.nth(4).getByRole("spinbutton", { name: "Days before it is on sale or online" });
  await shoot.fill("124");
  // What comes in from elsewhere meanwhile leaves it as it is being written.
  await page.waitForTimeout(1_500);
  assert.equal(await shoot.inputValue(), "124");
  await shoot.blur();
  await steps.nth(4).getByText("Friday, 4 July 2031").waitFor();
  await steps.nth(2).getByText("Thursday, 26 June 2031").waitFor();

  // Mussels are out of season in July, until whoever lands them says otherwise.
  const out = dates.getByText("out of season on 4 July 2031, in season from September to April");
  assert.match(await out.innerText(), /ussels.*from memory/);
  await dates.getByText("When its food is in season", { exact: true }).tap();
  const food = dates.getByRole("group", { name: "mussels", exact: true });
  await food.getByRole("combobox", { name: /^From/ }).selectOption("July");
  await dates.getByText("July to April, as you say").waitFor();
  await out.waitFor({ state: "detached" });
  await page.getByRole("button", { name: "Undo" }).tap();
  await out.waitFor();
  await assertAccessible(page);

  const [download] = await Promise.all([
    page.waitForEvent("download"),
    dates.getByRole("button", { name: "Calendar file" }).tap(),
  ]);
  assert.equal(download.suggestedFilename(), "harbour-supper-dates.ics");
  const text = await readFile(await download.path(), "utf8");
  assert.equal(text.match(/BEGIN:VEVENT/g)?.length, 7);
  for (const line of ["DTSTART;VALUE=DATE:20310704", "DTEND;VALUE=DATE:20310705", "SUMMARY:Shoot: Harbour supper"]) {
    assert.ok(text.includes(`${line}\r\n`), `${line} in ${text}`);
  }
  assert.equal(new Set(text.match(/^UID:.*$/gm)).size, 7, "each has a UID of its own");

  await day.fill("");
  await day.blur();
  await dates.getByText("Say when it is on sale or online").waitFor();
  assertClean(faults);
  await context.close();
});
