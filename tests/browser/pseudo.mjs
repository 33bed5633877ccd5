// The page in words as no one speaks them: every screen on two phones and at a
// desk, with nothing cut off, nothing laid over anything else, no scrolling
// sideways, and no word that is not from the table of words.

import assert from "node:assert/strict";
import { mkdir, readFile, readdir } from "node:fs/promises";

import { amiss } from "./laid.mjs";
import { browser, guarded, phone, root } from "./support.mjs";
import { everything } from "./walk.mjs";

const [kind = "long", folder = "target/words"] = process.argv.slice(2);

const LETTERS = "aàbƀcçdđeéfḟgğhĥiïjĵkķlĺmṁnñoöpṗqɋrřsštŧuüvṽwŵxẋyýzž";

/** Plain words as the page of this kind puts them. */
function said(words) {
  if (kind === "mirrored") return `\u202e${words}\u202c`;
  return words.replace(/[a-z]/gi, (letter) => {
    const low = letter.toLowerCase();
    const accented = LETTERS[LETTERS.indexOf(low) + 1];
    const first = letter === low ? accented : letter === "B" ? "Ƀ" : accented.toUpperCase();
    return "aeiouy".includes(low) ? first + accented : first;
  });
}

/** Names that are no words of the table: of the catalogue, of the first table and of the dishes one lays. */
async function names() {
  const catalogue = new URL("crate/planner/src/catalogue/", `file://${root}`);
  const others = ["static/starters/harbour-supper.spread.json", "crate/planner/src/commands/lay/dishes.rs"];
  const texts = await Promise.all(others.map((file) => readFile(`${root}${file}`, "utf8")));
  for (const file of await readdir(catalogue)) texts.push(await readFile(new URL(file, catalogue), "utf8"));
  const found = texts.flatMap((text) => [...text.matchAll(/"([^"\n]*[a-z]{2}[^"\n]*)"/g)].map(([, name]) => name));
  return [...new Set(found)].sort((a, b) => b.length - a.length);
}

/** What the browser says of a day, what is typed on the walk, names of files and units. */
const OURS = [
  "January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
  "November", "December", "AM", "PM", "Harbour supper", "Citrus breakfast", "Noodle night", "My table",
  "broken.json", "list.csv", "set.png", "candle plate", "odd one", "two dozen", "less oil", "zzzz",
];
const UNITS = /\b(cm|mm|kg|lb|in|min|px|mb|kb|csv|pdf|svg|png|json|iso)\b/gi;

const SIZES = [[390, 844], [320, 640], [1280, 800]];

await mkdir(folder, { recursive: true });
const url = process.env.OVERSPREAD_URL;
const chromium = await browser();
const { context } = await guarded(chromium, url, { ...phone, reducedMotion: "reduce" });
const known = [...OURS, ...(await names())];
const found = new Map();
let pictures = 0;

const looks = (page) => async (name) => {
  for (const [width, height] of SIZES) {
    await page.setViewportSize({ width, height });
    await page.waitForTimeout(60);
    const faults = await page.evaluate(amiss, [known, UNITS.source, kind === "mirrored"]);
    for (const fault of faults) found.set(fault, [...(found.get(fault) ?? []), `${name} at ${width}`]);
    pictures += 1;
    const file = `${kind}-${String(pictures).padStart(3, "0")}-${name.replace(/\P{L}+/gu, "-")}-${width}.png`;
    await page.screenshot({ path: `${folder}/${file}` });
  }
  await page.setViewportSize({ width: SIZES[0][0], height: SIZES[0][1] });
  console.log(name);
};

try {
  const page = await context.newPage();
  await page.goto(url);
  await page.waitForSelector("html[data-core=ready]");
  await everything(page, looks, said);
} finally {
  await chromium.close();
  for (const [fault, where] of found) console.log(`${fault}\n    ${where.slice(0, 4).join(", ")}`);
}
assert.equal(found.size, 0, `${found.size} faults in words that are ${kind}`);
