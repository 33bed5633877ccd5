// The page in words as no one speaks them: every screen on two phones and at a
// desk, with nothing cut off, nothing laid over anything else, no scrolling
// sideways, and no word that is not from the table of words.

import assert from "node:assert/strict";
import { mkdir, readFile, readdir } from "node:fs/promises";

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

/** What is amiss on the screen as it is. */
function amiss([known, units, ourOwn]) {
  const faults = [];
  const wide = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth > wide + 1) {
    faults.push(`scrolls sideways: ${document.documentElement.scrollWidth} of ${wide}`);
  }
  const say = document.querySelector(".work .say");
  if (say !== null && say.clientHeight < 150) faults.push(`only ${say.clientHeight} px are left for what is said`);
  const told = (element) => {
    const { tagName, className } = element;
    const of = typeof className === "string" && className !== "" ? `.${className}` : "";
    return `${tagName.toLowerCase()}${of} “${element.textContent.trim().slice(0, 40)}”`;
  };
  const seen = (element) => element.checkVisibility({ visibilityProperty: true }) && element.closest(".away") === null;
  const root = document.querySelector("dialog[open]") ?? document.body;
  const escaped = known.map((name) => name.replace(/[^\p{L}\p{N} ]/gu, "\\$&"));
  const names = new RegExp(`(?<![a-z])(${escaped.join("|")})(?![a-z])`, "gi");
  // A thing is mentioned again by its noun.
  const nouns = new Set(known.flatMap((name) => name.match(/[a-z]+/gi) ?? []));
  const words = (text) => {
    const left = text.replace(names, " ").replace(new RegExp(units, "gi"), " ").match(/[a-z]{3,}/gi) ?? [];
    const strange = left.filter((word) => !nouns.has(word));
    return strange.length > 0 && strange;
  };
  const walk = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  for (let node = walk.nextNode(); node !== null; node = walk.nextNode()) {
    const { parentElement: holder, data } = node;
    if (data.trim() === "" || holder === null || holder.matches("script,style,noscript,title,textarea")) continue;
    if (!seen(holder)) continue;
    // What is amiss in a file is told in the words of its format.
    if (!ourOwn && holder.closest(".problems") === null && words(data)) faults.push(`not from the table: ${words(data)} in ${told(holder)}`);
    if (holder.closest("svg,option,.flick,.keeps") !== null) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const box = range.getBoundingClientRect();
    if (box.width === 0) continue;
    if (box.left < -1 || box.right > wide + 1) faults.push(`off the side: ${told(holder)}`);
    const control = holder.closest("button,summary,label,output,.tape");
    const room = control?.getBoundingClientRect();
    if (room && (box.left < room.left - 2 || box.right > room.right + 2 || box.bottom > room.bottom + 3)) {
      faults.push(`spills out of its control: ${told(holder)}`);
    }
    for (let at = holder; at !== null && at !== root; at = at.parentElement) {
      const style = getComputedStyle(at);
      if (style.overflowX === "auto" || style.overflowX === "scroll") break;
      const cuts = style.overflowX === "hidden" || style.overflowX === "clip";
      if (cuts && at.scrollWidth > at.clientWidth + 1) faults.push(`cut off: ${told(at)}`);
    }
  }
  if (!ourOwn) {
    for (const each of root.querySelectorAll("[aria-label],[placeholder],[alt]")) {
      const text = ["aria-label", "placeholder", "alt"].map((name) => each.getAttribute(name) ?? "").join(" ");
      if (words(text)) faults.push(`not from the table: ${words(text)} names ${told(each)}`);
    }
  }
  const controls = [...root.querySelectorAll("button,select,summary,input,textarea,a[href]")].filter(seen);
  const places = controls.map((each) => each.getBoundingClientRect());
  const apart = (one, other) => one.contains(other) || other.contains(one);
  const scrolled = (each) => each.closest(".say,.places,.row,.head,.looks,dialog,nav") ?? document.body;
  for (let n = 0; n < controls.length; n += 1) {
    for (let m = n + 1; m < controls.length; m += 1) {
      const [a, b] = [places[n], places[m]];
      const over = Math.min(a.right, b.right) - Math.max(a.left, b.left) > 3 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 3;
      const sticky = [controls[n], controls[m]].some((each) => getComputedStyle(each).position === "sticky");
      if (over && !sticky && !apart(controls[n], controls[m]) && scrolled(controls[n]) === scrolled(controls[m])) {
        faults.push(`one over another: ${told(controls[n])}, ${told(controls[m])}`);
      }
    }
  }
  return [...new Set(faults)];
}

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
