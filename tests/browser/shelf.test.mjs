// The shelf: a thing kept, a list of another program told before it is taken,
// what the pull list finds, and a size from a photo; each taken back.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

import { setUp } from "./setup.mjs";
import { assertAccessible, assertClean, phone, root } from "./support.mjs";

const at = setUp();

const supper = JSON.parse(await readFile(`${root}static/starters/harbour-supper.spread.json`, "utf8"));
const tumbler = supper.items.find((item) => item.prop === "wine-tumbler");

/** A list as a spreadsheet of another country saves it: two good rows among odd ones. */
const LIST = [
  "\ufeffWhere;Pieces;Thing;What;diameter (cm);height;Colour;Note",
  `rack B;4;wine tumbler;wine-tumbler;${String(tumbler.size.diameter / 10).replace(".", ",")};${tumbler.height / 10};;thin rims`,
  "drawer;two dozen;napkin;;46;;white;",
  "drawer;12;napkin;;46;;white;\"'=1+1\"",
  ";1;moon saucer;;;;;",
  "top;0;big plate;dinner-plate;28;;cream;",
  ";;;;;;;",
  "a;b;c;d;e;f;g;h;i",
].join("\r\n");

/** A thousand rows, none of which can be taken: cells short of or past the columns, no such thing, figures that are none. */
const ODD = ["name;prop;count;diameter (cm)"];
for (let n = 1; n <= 1000; n += 1) {
  const rows = [`a${n}`, `b${n};no-such-thing;1;10`, `c;dinner-plate;-${n};27`, `d;dinner-plate;1;${"9".repeat(200)}`, "e;;;;;;;=1+1"];
  ODD.push(rows[n % rows.length]);
}

/** How the plane of a card is seen, and the inverse way a pixel lies in it. */
const SEEN = [2.3, 0.12, 90, -0.08, 2.25, 150, 0.00012, 0.00006, 1];
const seen = ([x, y]) => {
  const away = SEEN[6] * x + SEEN[7] * y + SEEN[8];
  return [(SEEN[0] * x + SEEN[1] * y + SEEN[2]) / away, (SEEN[3] * x + SEEN[4] * y + SEEN[5]) / away];
};
const [WIDE, HIGH] = [1000, 700];
const CARD = [[0, 0], [85.6, 0], [85.6, 53.98], [0, 53.98]];
/** A plate of 27 cm beside it. */
const PLATE = { middle: [230, 100], radius: 135 };
const around = ([x, y], radius) =>
  Array.from({ length: 90 }, (_, n) => [x + radius * Math.cos(n / 14.32), y + radius * Math.sin(n / 14.32)]);

/** A photo of both, drawn as they are seen. */
const photo = async (page) => {
  const outlines = [CARD, around(PLATE.middle, PLATE.radius)].map((outline) => outline.map(seen));
  const address = await page.evaluate(
    ([wide, high, [card, plate]]) => {
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [wide, high];
      const context = canvas.getContext("2d");
      for (const [fill, outline] of [["#6b4a30", [[0, 0], [wide, 0], [wide, high], [0, high]]], ["#f4f1ea", plate], ["#2b5c9e", card]]) {
        context.fillStyle = fill;
        context.beginPath();
        for (const [x, y] of outline) context.lineTo(x, y);
        context.fill();
      }
      return canvas.toDataURL("image/png");
    },
    [WIDE, HIGH, outlines],
  );
  return { name: "plate.png", mimeType: "image/png", buffer: Buffer.from(address.split(",")[1], "base64") };
};

test("what is owned is kept, listed, found by the pull list and measured in a photo", async () => {
  const { context, faults } = await at.guarded({ ...phone, reducedMotion: "reduce" });
  const page = await at.started(context);
  await page.locator(".first .solid").click();
  await page.getByRole("button", { name: "Papers", exact: true }).click();
  await page.getByText("Props to pull", { exact: true }).click();
  const rows = page.getByRole("list", { name: "Props to pull" });
  const row = rows.getByRole("listitem").filter({ hasText: "wine tumbler" });
  await row.locator("summary").click();

  // A row of the pull list goes onto the shelf, and comes off it again.
  await row.getByRole("button", { name: "I own 3 of these" }).click();
  await row.getByText("On your shelf: have 3 of 3").waitFor();
  const shelf = page.locator("details.panel", { has: page.locator("> summary", { hasText: "Your shelf" }) });
  await shelf.locator("> summary").click();
  await shelf.getByText(/The shelf has 3 of the \d+ pieces/).waitFor();
  await shelf.getByRole("button", { name: "Put it back as it was" }).click();
  await shelf.getByText("Nothing is on it yet").waitFor();

  // A list with odd rows: told first, then its good rows taken.
  const list = shelf.getByLabel("Add from a list (CSV)");
  await list.setInputFiles({ name: "wide.csv", mimeType: "text/csv", buffer: Buffer.from("\ufeffname", "utf16le") });
  await shelf.getByRole("alert").filter({ hasText: "wide.csv was not read" }).waitFor();
  await list.setInputFiles({ name: "odd.csv", mimeType: "text/csv", buffer: Buffer.from(ODD.join("\n")) });
  await shelf.getByText("0 good, 1000 not. Nothing is taken yet.").waitFor();
  await shelf.getByRole("button", { name: "Leave it all" }).click();
  await shelf.getByText("Nothing is on it yet").waitFor();
  await list.setInputFiles({ name: "own.csv", mimeType: "text/csv", buffer: Buffer.from(LIST) });
  await shelf.getByText("2 good, 4 not. Nothing is taken yet.").waitFor();
  await shelf.getByText("Columns passed over: Note").waitFor();
  const odd = await shelf.getByRole("list", { name: "4 rows that are not taken" }).getByRole("listitem").allInnerTexts();
  for (const [n, part] of [[0, /^Row 3: .*two dozen/], [1, /^Row 5: .*moon saucer/], [2, /^Row 6: .*“0”/], [3, /^Row 8: .*9 cells/]]) {
    assert.match(odd[n], part);
  }
  await shelf.getByText("Nothing is on it yet").waitFor();
  await shelf.getByRole("button", { name: "Take the 2 good rows" }).click();
  await shelf.getByText("2 sorts of things").waitFor();
  await assertAccessible(page, { within: "main" });
  for (let n = 0; n < 3; n += 1) await row.getByRole("button", { name: "wine tumbler: one more in the picture" }).click();
  await row.getByText("On your shelf: have 4 of 6, at rack B").waitFor();

  // Its count is changed, and its place; both stay over a reload.
  const things = shelf.getByRole("list", { name: "Your shelf" });
  const thing = things.getByRole("listitem").filter({ hasText: "wine tumbler" });
  await thing.locator("summary").first().click();
  await thing.getByRole("button", { name: "wine tumbler: one more" }).click();
  await row.getByText("On your shelf: have 5 of 6, at rack B").waitFor();

  // A size from a photo: four taps on the card, two on the plate.
  await shelf.getByText("Size from a photo", { exact: true }).click();
  const choose = shelf.getByLabel("Photo of the thing with it");
  await choose.setInputFiles({ name: "notes.txt", mimeType: "text/plain", buffer: Buffer.from("no photo") });
  await shelf.getByRole("alert").filter({ hasText: "notes.txt" }).waitFor();
  await choose.setInputFiles(await photo(page));
  const shot = shelf.locator(".shot");
  await shot.waitFor();
  await shot.scrollIntoViewIfNeeded();
  const box = await shot.boundingBox();
  const tap = async (place) => {
    const [x, y] = seen(place);
    await page.touchscreen.tap(box.x + (box.width * x) / WIDE, box.y + (box.height * y) / HIGH);
  };
  for (const corner of CARD) await tap(corner);
  await shelf.getByText("The four taps fit.").waitFor();
  const [x, y] = PLATE.middle;
  await tap([x - PLATE.radius, y]);
  await tap([x + PLATE.radius, y]);
  const told = await shelf.locator("b", { hasText: "across" }).innerText();
  const [, across, off] = /([\d.]+) ± ([\d.]+) cm across/.exec(told);
  assert.ok(Math.abs(Number(across) - 27) <= Number(off), `27 cm within ${told}`);
  await shelf.getByText(/It must lie in one plane/).waitFor();
  const search = shelf.getByLabel("Trade name or size").last();
  await search.fill("dinner plate");
  await shelf.getByRole("list", { name: "Put it on your shelf at this size" }).getByRole("button", { name: /dinner plate/ }).click();
  await things.getByRole("listitem").filter({ hasText: "dinner plate" }).waitFor();

  // Another season: only what changes is shown, what is ticked stays, and one
  // step takes it back.
  const season = page.locator("details.panel", { has: page.locator("> summary", { hasText: "Another season" }) });
  await season.locator("> summary").click();
  await season.getByRole("button", { name: "summer", exact: true }).click();
  const changes = season.getByRole("list", { name: "Only what changes" });
  await changes.getByText("out: mussels").waitFor();
  await season.getByLabel(/^mussels \(else /).check();
  await season.getByText("mussels is out of season and stays, as you wish.").waitFor();
  await changes.getByText("out: mussels").waitFor({ state: "detached" });
  await season.getByLabel(/^mussels \(else /).uncheck();
  const listed = await changes.getByRole("listitem").allInnerTexts();
  assert.ok(listed.some((line) => line.startsWith("in: scrubbed pine")), `the board: ${listed}`);
  assert.ok(!listed.some((line) => line.includes("wine tumbler")), "what stays is not listed");
  const items = () => page.locator('[data-key^="item-"]').count();
  const laid = await items();
  await season.getByRole("button", { name: "Lay it so" }).click();
  await season.getByText("Nothing would change.").waitFor();
  assert.equal(await items(), laid, "everything is where it was");
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await changes.getByText("out: mussels").waitFor();
  await page.getByText("One piece for two places", { exact: true }).click();
  await page.getByText(/No two places are set|without a further exposure/).waitFor();

  // All of it is there after a reload, and what is put on the table is its own.
  await page.reload();
  await page.waitForSelector("html[data-core=ready]");
  await page.getByRole("button", { name: "Papers", exact: true }).click();
  await shelf.locator("> summary").click();
  await shelf.getByText("3 sorts of things").waitFor();
  assert.match(await thing.innerText(), /× 5[\s\S]*rack B/);
  assertClean(faults);
  await context.close();
});
