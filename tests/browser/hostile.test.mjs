// Hostile files and links through the page's own ways in: each is refused in
// one report with the open layout untouched, or opened with nothing injected.

import assert from "node:assert/strict";
import { readdir, readFile } from "node:fs/promises";
import { test } from "node:test";

import { file } from "./layouts.mjs";
import { long, ready, setUp } from "./setup.mjs";
import { assertClean, keptForOffline, painted, phone } from "./support.mjs";

/** One report: what stands there, and what may. */
const REPORT = /found .+[,;] allowed:? .+/;
/** A browser drops the mark itself before the page sees the text. */
const MARKED = "syntax-byte-order-mark.json";

const corpus = new URL("../hostile/", import.meta.url);

const { guarded, site, started } = setUp();

/** Every so manieth input is tried where there is no time for all; the core's own tests try all. */
const EVERY = long ? 1 : 3;

/** `[name, bytes]` of every file in a folder of the corpus. */
async function inputs(folder) {
  const names = (await readdir(new URL(folder, corpus))).sort();
  const read = async (name) => [name, await readFile(new URL(`${folder}/${name}`, corpus))];
  return Promise.all(names.map(read));
}

/** A page at work on a table of its own, with a step that can be taken back. */
async function working() {
  const { context, faults } = await guarded({ ...phone, reducedMotion: "reduce" });
  const page = await started(context);
  await page.locator(".solid").tap();
  await page.getByRole("button", { name: "Now yours" }).tap();
  for (const dish of ["black olives", "rice", "dark-crusted loaf"]) {
    await page.getByRole("button", { name: dish, exact: true }).tap();
  }
  await page.getByRole("button", { name: "Lay the table" }).tap();
  await page.getByRole("button", { name: "Hands", exact: true }).tap();
  await page.getByRole("button", { name: "squeeze lemon" }).tap();
  await page.getByRole("button", { name: "Papers" }).tap();
  await painted(page);
  await keptForOffline(page);
  return { context, faults, page };
}

/**
 * What is open: where its things and hands are, its name, and whether a step can be
 * taken back. How they are drawn is left out: light and readings come whenever they
 * are ready.
 */
function open(page) {
  return page.evaluate(() => ({
    drawing: [...document.querySelectorAll("[data-key^=item-], [data-key^=linen-], [data-key^=hand-]")]
      .map((drawn) => `${drawn.dataset.key} ${drawn.getAttribute("transform")}`).join("\n"),
    names: [...document.querySelectorAll("h1, h2")].map((heading) => heading.textContent),
    undo: [...document.querySelectorAll("button")]
      .filter((button) => /undo/i.test(button.textContent + button.getAttribute("aria-label")))
      .map((button) => button.disabled),
  }));
}

/** Fails when anything in the page came out of an input as more than text. */
async function assertNothingInjected(page, name) {
  const found = await page.evaluate(() => ({
    // But the one the page begins with.
    scripts: document.querySelectorAll("script:not([src])").length - 1,
    pictures: document.querySelectorAll("img[src=x], [onerror], [onload]").length,
    addresses: [...document.querySelectorAll("[href], [src]")]
      .map((element) => element.getAttribute("href") ?? element.getAttribute("src"))
      .filter((address) => /^\s*(javascript|data:text)/i.test(address)),
    paints: [...document.querySelectorAll("[fill], [stroke], [style]")]
      .flatMap((element) => ["fill", "stroke", "style"].map((key) => element.getAttribute(key)))
      .filter((value) => /javascript|expression|url\((?!#)/i.test(value ?? "")),
    hurt: globalThis.hurt,
    polluted: {}.polluted,
  }));
  const nothing = {
    scripts: 0, pictures: 0, addresses: [], paints: [], hurt: undefined, polluted: undefined,
  };
  assert.deepEqual({ ...nothing, ...found }, nothing, name);
}

/** Reads the one report, and puts it away. */
async function report(page, words) {
  const alert = page.getByRole("alert").filter({ hasText: words });
  await alert.waitFor({ timeout: 20_000 });
  const text = await alert.innerText();
  const inside = await alert.locator("*").evaluateAll((all) => all.map((each) => each.localName));
  const plain = inside.filter((name) => !["p", "ul", "li"].includes(name));
  assert.deepEqual(plain, [], `${words}: the report is text`);
  await page.getByRole("alert").locator("xpath=following-sibling::button").first().tap();
  await alert.waitFor({ state: "detached" });
  return text;
}

test("hostile files leave the open layout as it was, or open as text", async () => {
  const { context, faults, page } = await working();
  const was = await open(page);
  assert.ok(was.drawing.split("\n").length > 5, "things and hands are drawn");
  const kept = await file(page);
  const input = page.getByLabel("Open a file");
  const files = await inputs("files");
  const hand = ([name, buffer]) =>
    input.setInputFiles({ name, mimeType: "application/json", buffer });
  const opens = ([name]) => name.startsWith("ok-") || name === MARKED;
  const bad = files.filter((each) => !opens(each));
  for (const each of bad.filter((_, n) => n % EVERY === 0)) {
    await hand(each);
    const said = await report(page, each[0]);
    assert.match(said, REPORT, `${each[0]}: ${said}`);
    assert.deepEqual(await open(page), was, `${each[0]} changed what was open`);
  }
  assert.ok((await file(page)) === kept, "what is open is the same to the byte");
  await assertNothingInjected(page, "refused files");

  // More problems than one come in one report.
  const sound = files.find(([name]) => name === "ok-sound.json")[1].toString();
  const twice = sound.replace("1200", "-1").replace("#a27c59", "url(#x)");
  await hand(["twice.json", Buffer.from(twice)]);
  const both = await report(page, "twice.json");
  assert.ok(both.includes("table.width") && both.includes("table.surface.colour"), both);

  // What was open is also what was kept.
  await page.reload();
  await ready(page);
  await page.locator("[data-key^=hand-]").first().waitFor();
  assert.deepEqual((await open(page)).names.slice(0, 1), was.names.slice(0, 1), "after a reload");

  const between = Buffer.from(sound.replace("A board", "Between"));
  await page.getByRole("button", { name: "Papers" }).tap();
  for (const each of files.filter(opens).filter((_, n) => n % EVERY === 0)) {
    await hand(["between.json", between]);
    const marker = page.getByRole("heading", { name: "Between" });
    await marker.waitFor();
    const { title } = JSON.parse(new TextDecoder().decode(each[1]));
    await hand(each);
    await marker.waitFor({ state: "detached" });
    assert.equal(await page.getByRole("alert").count(), 0, `${each[0]} opens`);
    await assertNothingInjected(page, each[0]);
    if (title.includes("<")) {
      const heading = page.getByRole("heading", { name: title });
      assert.ok((await heading.count()) > 0, `${each[0]}: its title is text`);
    }
  }
  assertClean(faults);
  await context.close();
});

test("hostile links leave the open layout as it was, or show as text", async () => {
  const { context, faults, page } = await working();
  const was = await open(page);
  const links = await inputs("links");
  const go = ([, bytes]) => page.evaluate((text) => (location.hash = text), bytes.toString());
  // Nothing after the `#` is no link.
  const empty = ["syntax-empty.link", "syntax-sharp.link"];
  const bad = links.filter(([name]) => !name.startsWith("ok-") && !empty.includes(name));
  // What looks like a client's answer is read as one, and refused as one.
  const answer = "version-answer.link";
  // Its own report is told of by no other.
  for (const link of bad.filter(([name], n) => n % EVERY === 0 || name === answer)) {
    await go(link);
    const said = await report(
      page,
      link[0] === answer ? "This answer was not read" : "The link could not be read",
    );
    assert.match(said, REPORT, `${link[0]}: ${said}`);
    assert.deepEqual(await open(page), was, `${link[0]} changed what was open`);
  }
  await assertNothingInjected(page, "refused links");
  const good = links.filter(([name]) => name.startsWith("ok-"));
  for (const link of good.filter((_, n) => n % EVERY === 0)) {
    await page.goto(site.url);
    await ready(page);
    await go(link);
    await page.getByRole("button", { name: "Reply" }).waitFor();
    await assertNothingInjected(page, link[0]);
  }
  await page.goto(site.url);
  await page.locator("[data-key^=hand-]").first().waitFor();
  assertClean(faults);
  await context.close();
});

// Three of them come by in the ordinary run, with the client who sends one.
if (long) test("hostile answers leave the open layout as it was, or show as text", async () => {
  const { context, faults, page } = await working();
  const was = await open(page);
  const go = ([, bytes]) => page.evaluate((text) => (location.hash = text), bytes.toString());
  const few = (_, n) => n % EVERY === 0;
  const answers = await inputs("answers");
  // A whole layout handed on as an answer is a layout.
  const kinds = answers.filter(([name]) => !name.includes("layout"));
  for (const answer of kinds.filter(([name]) => !name.startsWith("ok-")).filter(few)) {
    await go(answer);
    // Of lost characters nobody can say what they were an answer or a layout of.
    const said = await report(page, /This answer was not read|The link could not be read/);
    assert.match(said, REPORT, `${answer[0]}: ${said}`);
    assert.deepEqual(await open(page), was, `${answer[0]} changed what was open`);
  }
  for (const answer of kinds.filter(([name]) => name.startsWith("ok-")).filter(few)) {
    await go(answer);
    await page.getByText("It answers a table that is not on this phone.").waitFor();
    await assertNothingInjected(page, answer[0]);
    await page.getByRole("button", { name: "Throw it away" }).tap();
  }
  assertClean(faults);
  await context.close();
});
