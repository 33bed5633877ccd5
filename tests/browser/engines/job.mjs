// Steps of the main job, as they are done in any engine. Each holds the page to
// what it should then show and returns what there is to tell.

import assert from "node:assert/strict";

import { PAPERS } from "../papers.mjs";

const button = "button";
const ITEM = ".picture [data-key^=item-]";
const group = (name) => `[role=group][aria-label="${name}"] button`;

/** The share in a text, in percent. */
function percent(words) {
  const found = /(\d+)\s*%/.exec(words);
  assert.ok(found, `no share in "${words}"`);
  return Number(found[1]);
}

/** The first sentence is read, its one button pressed, and the new figure lower; the
 * next thing to try is told. */
export async function firstCure(page) {
  const was = percent(await page.words(".first .big"));
  await page.press(".first .solid");
  const is = percent(await page.words(".was .figure"));
  assert.ok(is < was, `the remedy lowers ${was}% and left ${is}%`);
  await page.see(".find .big");
  return `${was}% of the outline lost, then ${is}%`;
}

/** How well the food separates from what it lies on, once all is read. */
async function separation(page) {
  await page.gone(".scores .late");
  return Number(/Separation\s+(\d+)/.exec(await page.words(".scores"))?.[1]);
}

/** The same cure where the table was seen before: taken from among the findings. */
export async function cureAmongFindings(page) {
  const sentence = /^The mussel pot loses 100% of its outline/;
  await page.see(".find > button", sentence);
  const was = await separation(page);
  await page.press("button.tape", /^Lay the oat runner/);
  await page.gone(".find > button", sentence);
  const is = await separation(page);
  assert.ok(is > was, `separation rises from ${was} and came to ${is}`);
  return `separation ${was}, then ${is}`;
}

/** The link of the table at work. */
export async function link(page) {
  await page.press(button, "Papers");
  await page.press(button, "Make the link");
  const address = await page.words("input.link");
  assert.match(address, /#./, "a link that holds the table");
  return address;
}

/** A client opens the link: the picture, so many crops, nothing to edit, one reply. */
export async function clientSees(page, address, { title, crops }) {
  await page.open(address);
  await page.see(button, "Reply");
  assert.equal(await page.words("h1"), title, "the table's name");
  assert.equal(await page.count("nav"), 0, "no editing controls");
  assert.equal(await page.count(".flick figure"), 1 + crops, "the picture and its crops");
  const things = await page.count(".flick figure:first-child [data-key^=item-]");
  assert.ok(things > 0, "things are drawn");
  return `things drawn: ${things}; crops: ${crops}; from a link of ${address.length} characters`;
}

/** The client points at the hero of the demonstration table and remarks on it. */
export async function remarkOnHero(client) {
  await client.tap(".flick figure:first-child [data-key=item-1]");
  await client.see("ol.remarks .quiet", /mussel pot/);
  await client.fill("form.writing textarea", undefined, "more lemon");
  await client.press(button, "Done");
  assert.match(await client.words("textarea.sent"), /\n1\. [^\n]*mussel pot[^\n]*more lemon\n/);
}

/** A table of one's own with five dishes. */
export async function ownTable(page) {
  await page.press(button, "Now yours");
  for (const dish of ["pot of mussels", "seared aubergine", "dark-crusted loaf", "black olives", "rice"]) {
    await page.press(button, dish);
  }
  await page.press(button, "Lay the table");
  await page.see("section[aria-label=Findings] .find");
  assert.equal(await page.words("h1"), "My table");
  const things = await page.count(ITEM);
  assert.ok(things >= 5, `${things} things`);
  return `${things} things on it`;
}

/** A coupe, found by its letters. */
export async function dishAdded(page) {
  const before = await page.count(ITEM);
  await page.press(button, "Add a thing");
  await page.fill("input[type=search]", undefined, "coupe");
  await page.press(".finds li button", /^coupe/);
  await page.until("one thing more is drawn", (css, count) => document.querySelectorAll(css).length === count, ITEM, before + 1);
  await page.press(button, "Done adding");
  return "a coupe, found by its letters";
}

/** Where the thing that was added last stands, from the drawing. */
const place = (page) =>
  page.ask((css) => {
    const things = [...document.querySelectorAll(css)];
    const last = things.reduce((a, b) => (Number(b.dataset.key.slice(5)) > Number(a.dataset.key.slice(5)) ? b : a));
    return { key: last.dataset.key, at: last.getAttribute("transform") };
  }, ITEM);

export async function moved(page) {
  const before = await place(page);
  await page.drag(`.picture [data-key=${before.key}]`, 60, 30);
  await page.see(".row .quiet", /moved/);
  const after = await place(page);
  assert.notEqual(after.at, before.at, "it stands elsewhere");
  return page.words(".row .quiet");
}

const HAND = ".picture [data-key^=hand-]";

export async function hands(page) {
  await page.press(button, "Hands");
  await page.press(button, "squeeze lemon");
  await page.see(HAND);
  assert.equal(await page.count(HAND), 2, "one pair of hands is drawn");
  return "two hands drawn, squeezing a lemon";
}

export async function crop(page) {
  await page.press(button, "Crops");
  await page.press(group("Add a crop"), "4:5 post");
  await page.see(".keeps button", /4:5 post/);
  return "4:5 post, drawn with what it keeps";
}

export async function undoAndRedo(page) {
  await page.press(button, "Undo");
  await page.gone(".keeps button");
  await page.press(button, "Redo");
  await page.see(".keeps button", /4:5 post/);
  return "the crop gone, and back";
}

/** What is on the table, by key and place. */
const drawn = (page) =>
  page.ask(() =>
    [...document.querySelectorAll(".picture [data-key^=item-], .picture [data-key^=hand-]")]
      .map(({ dataset, attributes }) => `${dataset.key} ${attributes.transform?.value ?? ""}`)
      .sort(),
  );

export async function reloaded(page) {
  await page.see(".head span", /^saved on/);
  const before = await drawn(page);
  await page.reload();
  await page.see("h1", "My table");
  assert.deepEqual(await drawn(page), before, "everything stands where it stood");
  await page.press(button, "Crops");
  await page.see(".keeps button", /4:5 post/);
  await undoAndRedo(page);
  return `${before.length} things and hands where they stood, and steps to take back`;
}

const PAPERS_PART = "section[aria-label='Papers to print']";

/** Runs in the page: how many pictures of this name there are, once all are drawn. */
function imagesOf(begin) {
  const images = [...document.querySelectorAll("img")].filter(({ alt }) => alt.startsWith(begin));
  return images.every((image) => image.complete && image.naturalWidth > 300) && images.length;
}

export async function papers(page) {
  await page.press(button, "Papers");
  let pages = 0;
  for (const name of PAPERS) {
    await page.press(`${PAPERS_PART} button`, name);
    pages += await page.until(`${name} is drawn`, imagesOf, `${name}, page `);
  }
  return `${PAPERS.length} papers drawn; pages: ${pages}`;
}

/** Runs in the page: notes what is handed out to be kept, and keeps nothing. */
function noteFiles() {
  const { createObjectURL } = URL;
  const made = new Map();
  globalThis.handed = [];
  URL.createObjectURL = (blob) => {
    const address = createObjectURL.call(URL, blob);
    made.set(address, blob);
    return address;
  };
  const note = (event) => {
    const saved = event.target.closest("a[download]");
    if (saved === null) return;
    event.preventDefault();
    const blob = made.get(saved.href);
    void blob.slice(0, 8).text().then((begin) => handed.push({ name: saved.download, size: blob.size, begin }));
  };
  document.addEventListener("click", note, { capture: true });
}

const SAVED = [
  [button, "Picture for a chat", "png", "PNG"],
  [`${PAPERS_PART} button`, "Save as PDF", "pdf", "%PDF-"],
];

/** A picture of pixels and, where the page can make one, a paper as PDF. */
export async function files(page, types = ["png", "pdf"]) {
  await page.ask(noteFiles);
  const told = [];
  for (const [css, name, type, begin] of SAVED.filter(([, , type]) => types.includes(type))) {
    await page.press(css, name);
    const find = (end) => handed.find((file) => file.name.endsWith(end));
    const file = await page.until(`a file of type ${type}`, find, `.${type}`);
    assert.ok(file.begin.includes(begin), `${file.name} begins as such a file does: ${file.begin}`);
    assert.ok(file.size > 5_000, `${file.name} holds ${file.size} bytes`);
    told.push(`${file.name}, ${Math.round(file.size / 1000)} kB`);
  }
  return told.join("; ");
}

/** The client remarks on a dish and replies; the last line is the answer's link. */
export async function reply(client) {
  await client.press(button, "Reply");
  await client.press(button, /^Remark on\s*1/);
  await client.fill("form.writing textarea", undefined, "more lemon");
  await client.press(button, "Done");
  const words = await client.words("textarea.sent");
  assert.match(words, /^My table[^\n]*\nAnswer: yes[^\n]*\n1\. [^\n]*more lemon\nhttp/);
  return words.split("\n").at(-1);
}

/** The answer comes back to the table it was given to. */
export async function answered(page, address) {
  await page.open(address);
  const came = "section[aria-label='An answer']";
  await page.see(`${came} li`, /more lemon/);
  await page.press(`${came} button`, "Put it on the table");
  await page.see("section[aria-label=Remarks] li", /more lemon/);
  return `a remark of ${address.length} characters, put on the table`;
}
