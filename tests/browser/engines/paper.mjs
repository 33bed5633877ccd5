// What a printer is given: of Firefox the file itself. WebKitGTK's driver cannot
// print, so there the page is told that printing begins, and its rules for
// paper are put in force on the screen.

import assert from "node:assert/strict";
import { inflateSync } from "node:zlib";

/** A file with less in it holds no picture, bytes. */
const PICTURED = 20_000;

/** Runs in the page: lets its rules for paper hold, as when something is printed. */
function paperRules() {
  for (const sheet of document.styleSheets) {
    for (const rule of sheet.cssRules) {
      if (rule instanceof CSSMediaRule && rule.media.mediaText === "print") rule.media.mediaText = "all";
    }
  }
}

/** Runs in the page: printing begins. Whether the sheet is there at once, as a
 * browser may look no later. */
function begin() {
  dispatchEvent(new Event("beforeprint"));
  return document.querySelector(".printed") !== null;
}

/** Runs in the page: printing ends, and with it the rules for paper. */
function end() {
  dispatchEvent(new Event("afterprint"));
  for (const sheet of document.styleSheets) {
    for (const rule of sheet.cssRules) {
      if (rule instanceof CSSMediaRule && rule.media.mediaText === "all") rule.media.mediaText = "print";
    }
  }
}

/** How many pages a PDF has, also where what it holds is packed. */
function pagesOf(file) {
  const text = file.toString("latin1");
  const packed = [...text.matchAll(/stream\r?\n([^]*?)\r?\nendstream/g)].flatMap(([, bytes]) => {
    try {
      return [inflateSync(Buffer.from(bytes, "latin1")).toString("latin1")];
    } catch {
      return [];
    }
  });
  return [text, ...packed].join("\n").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}

/** What the engine itself prints. */
async function printed(page) {
  const file = await page.printed();
  assert.equal(file.subarray(0, 5).toString(), "%PDF-");
  assert.ok(file.length > PICTURED, `a picture is on it: ${file.length} bytes`);
  const pages = pagesOf(file);
  assert.ok(pages > 0, "it has pages");
  return { pages, told: `printed by the engine; pages: ${pages}; ${Math.round(file.length / 1000)} kB` };
}

/** The table, as it is printed from any place of the page. */
export async function tableOnPaper(page) {
  if (page.printed !== undefined) return (await printed(page)).told;
  await page.ask(paperRules);
  assert.ok(await page.ask(begin), "the sheet is there at once");
  const text = await page.words(".printed");
  assert.match(text, /^My table/, "title");
  assert.match(text, /local rules and qualified people decide what is safe/, "the caution");
  const things = await page.count(".printed svg [data-key^=item-]");
  assert.ok(things > 0, "things are drawn");
  assert.equal(await page.count("button, input, select, textarea, summary, nav"), 0, "nothing to press");
  const ground = await page.ask(() => getComputedStyle(document.documentElement).getPropertyValue("--sheet"));
  assert.equal(ground.trim(), "#fff", "on white");
  await page.ask(end);
  return `${things} things, the list and the cautions on white, nothing to press; its driver cannot print`;
}

/** One of the papers, each page on a sheet of its own. */
export async function paperOnPaper(page) {
  const part = "section[aria-label='Papers to print']";
  await page.press("button", "Papers");
  await page.press(`${part} button`, "Set sheet");
  await page.see(`${part} img`, /^Set sheet, page 1/);
  const pages = await page.count(`${part} img`);
  // Nobody is there to answer what a browser asks before it prints.
  await page.ask(() => {
    window.print = () => (window.asked = true);
  });
  await page.press(`${part} button`, "Print this paper");
  await page.until("printing is asked for", () => window.asked);
  if (page.printed !== undefined) {
    const file = await printed(page);
    assert.equal(file.pages, pages, "each page on a sheet of its own");
    return `Set sheet: ${file.told}`;
  }
  await page.ask(paperRules);
  assert.ok(await page.ask(begin), "the sheets are there at once");
  assert.equal(await page.count(".printed img"), pages, "each page on a sheet of its own");
  assert.equal(await page.words(".printed"), "", "and nothing else");
  await page.ask(end);
  return `Set sheet; pages: ${pages}; its driver cannot print`;
}
