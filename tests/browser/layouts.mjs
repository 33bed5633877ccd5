// A kept layout as tests of keeping handle it: worked on, told to be saved, read
// as a file, and a core that falls over what it is given.

import { readFile } from "node:fs/promises";

import { painted } from "./support.mjs";

/** Waits until the open layout is said to be kept. */
export const saved = (page) => page.locator(".head").getByText(/^saved on/).waitFor();

export async function go(page, place) {
  await page.getByRole("navigation").getByRole("button", { name: place, exact: true }).click();
  await painted(page);
}

/** From the first visit to work on the first table. */
export async function begin(page) {
  await page.locator(".first .solid").click();
  await go(page, "Table");
  await saved(page);
  return page;
}

/** The open layout as the page saves it. */
export async function file(page) {
  await go(page, "Papers");
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save as a file", exact: true }).click();
  return readFile(await (await download).path(), "utf8");
}

/** The link of the open layout, and a page in which its client has begun a reply. */
export async function replying(page) {
  await go(page, "Papers");
  await page.getByRole("button", { name: "Make the link" }).click();
  const link = await page.locator("input.link").first().inputValue();
  const client = await page.context().newPage();
  await client.goto(link);
  await client.getByRole("button", { name: "Reply" }).click();
  return { link, client };
}

/** What these stores keep here, or all of them, byte for byte; what was handed over before is in it. */
export const kept = (page, stores = undefined) =>
  page.evaluate(async (wanted) => {
    const heard = (request) => new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = reject;
    });
    const database = await heard(indexedDB.open("overspread"));
    const all = {};
    for (const name of wanted ?? database.objectStoreNames) {
      all[name] = await heard(database.transaction(name).objectStore(name).getAll());
    }
    database.close();
    return JSON.stringify(all);
  }, stores);

/** Chooses the loaf of the first table. */
export async function choose(page) {
  await go(page, "Table");
  await page.locator("ol button, ul button").filter({ hasText: /^\s*3?\s*loaf/ }).first().click();
  await page.locator(".picture").focus();
}

/** Where the loaf stands, from the drawing. */
export const loaf = (page) =>
  page.locator(".picture [data-key=item-3]").evaluate((node) => node.getAttribute("transform"));

/** A clock on which every nudge is a step of its own; runs in the page. */
export function steps() {
  let now = 0;
  performance.now = () => (now += 5_000);
}

/**
 * Has the core fall in the page when it opens a kept layout whose file holds
 * `title`, with more than `most` steps done: as it opens it, or where `drawn` as
 * it draws it. Runs in the page, before anything of it.
 */
export function falling({ title, most, drawn }) {
  let due = false;
  const fall = () => {
    throw new WebAssembly.RuntimeError("unreachable");
  };
  const weak = ({ exports }) => {
    const open = (self, at, length, upto, done, ...rest) => {
      const bytes = new Uint8Array(exports.memory.buffer, at, length);
      due = new TextDecoder().decode(bytes).includes(title) && done > most;
      if (due && !drawn) fall();
      return exports.planner_open_kept(self, at, length, upto, done, ...rest);
    };
    const patch = (self) => {
      if (due && drawn) fall();
      return exports.planner_patch(self);
    };
    const start = (self) => {
      due = false;
      return exports.planner_open_starter(self);
    };
    return { exports: { ...exports, planner_open_kept: open, planner_open_starter: start, planner_patch: patch } };
  };
  const [begin, Real] = [WebAssembly.instantiate, WebAssembly.Instance];
  WebAssembly.instantiate = async (module, imports) => ({ instance: weak(await begin(module, imports)), module });
  WebAssembly.Instance = function Instance(...given) {
    return weak(new Real(...given));
  };
}
