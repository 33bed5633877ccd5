// What is asked of the page, whichever engine shows it: things are sought as
// they are seen and named, pressed where they lie, and waited for.

import assert from "node:assert/strict";
import { setTimeout as pause } from "node:timers/promises";

/** How long anything is waited for, and how long between two looks, ms. */
const [PATIENCE, BETWEEN] = [60_000, 60];

/** What is drawn under a selector and, where one is given, a name. Runs in the page. */
function seek(css, name) {
  const labels = (each) => [...(each.labels ?? [])].map((label) => label.textContent).join(" ");
  const said = (each) =>
    (each.getAttribute("aria-label") || each.alt || labels(each) || each.textContent).replace(/\s+/g, " ").trim();
  const fits = (each) => name === undefined || (name.like ? new RegExp(name.like).test(said(each)) : said(each) === name);
  return [...document.querySelectorAll(css)].filter((each) => each.getClientRects().length > 0 && fits(each));
}

/** The middle of the first that is sought, brought into view. */
function middle([sought]) {
  sought.scrollIntoView({ block: "center", inline: "center", behavior: "instant" });
  const { x, y, width, height } = sought.getBoundingClientRect();
  return [Math.round(x + width / 2), Math.round(y + height / 2)];
}

/** Where the first that is sought may be pressed, brought into view; null while something lies over it. */
function spot([sought]) {
  if (sought === undefined || sought.disabled) return null;
  sought.scrollIntoView({ block: "center", inline: "center", behavior: "instant" });
  const { x, y, width, height } = sought.getBoundingClientRect();
  const middle = [Math.round(x + width / 2), Math.round(y + height / 2)];
  const top = document.elementFromPoint(...middle);
  return sought === top || sought.contains(top) ? middle : null;
}

/** Notes what goes wrong from here on. Runs in the page. */
function watch() {
  const faults = (globalThis.faults = []);
  addEventListener("error", ({ message }) => {
    // No fault: a browser says so when a size is told one frame later.
    if (!message.startsWith("ResizeObserver loop")) faults.push(`uncaught: ${message}`);
  });
  addEventListener("unhandledrejection", ({ reason }) => faults.push(`uncaught: ${reason}`));
  document.addEventListener("securitypolicyviolation", ({ violatedDirective, blockedURI }) =>
    faults.push(`refused by policy: ${violatedDirective} ${blockedURI}`),
  );
  const { error } = console;
  console.error = (...words) => {
    faults.push(`console: ${words.join(" ")}`);
    error(...words);
  };
}

/** What was noted, and what was fetched from anywhere else. Runs in the page. */
function noted() {
  if (globalThis.faults === undefined) return [];
  const ours = ({ name }) => /^(blob|data):/.test(name) || new URL(name).origin === location.origin;
  const foreign = performance.getEntriesByType("resource").filter((each) => !ours(each));
  return [...globalThis.faults, ...foreign.map(({ name }) => `foreign request: ${name}`)];
}

const text = (value) =>
  value instanceof RegExp ? JSON.stringify({ like: value.source }) : JSON.stringify(value);

/** A page in front of one visitor. */
export class Page {
  #acts;
  #faults = [];

  constructor(acts) {
    this.#acts = acts;
  }

  /** Opens an address and waits until the page can be used. */
  async open(address) {
    await this.#note();
    // From a blank page, as an address that differs in its fragment alone would
    // not be opened anew.
    await this.#acts.open("about:blank");
    await this.#acts.open(address);
    await this.ready();
  }

  async reload() {
    await this.#note();
    await this.#acts.reload();
    await this.ready();
  }

  async ready() {
    await this.until("the page is ready", () => document.documentElement.dataset.core === "ready");
    await this.ask(watch);
  }

  /** Runs a function in the page. */
  ask(run, ...values) {
    return this.#acts.run(`(${run})(${values.map(text).join(", ")})`);
  }

  /** Runs a function in the page over what is sought, and over further values. */
  over(run, css, name, ...values) {
    const sought = `(${seek})(${text(css)}, ${text(name)})`;
    return this.#acts.run(`(${run})(${[sought, ...values.map(text)].join(", ")})`);
  }

  /** Waits until a function in the page gives something, and returns it. */
  until(what, run, ...values) {
    return this.#wait(what, () => this.ask(run, ...values));
  }

  /** Waits until what is sought is there. */
  see(css, name) {
    return this.#wait(`${css} ${name ?? ""} is seen`, () => this.over((all) => all.length, css, name));
  }

  /** Waits until what was sought is gone. */
  gone(css, name) {
    return this.#wait(`${css} ${name ?? ""} is gone`, () => this.over((all) => all.length === 0, css, name));
  }

  count(css, name) {
    return this.over((all) => all.length, css, name);
  }

  /** The words of the first that is sought, once it is there. */
  async words(css, name) {
    await this.see(css, name);
    return this.over(([first]) => (first.value ?? first.textContent).trim(), css, name);
  }

  async press(css, name) {
    let before = "";
    const [x, y] = await this.#wait(`${css} ${name ?? ""} can be pressed`, async () => {
      const now = await this.over(spot, css, name);
      // What is still moving would be missed.
      const rests = now !== null && String(now) === before;
      before = String(now);
      return rests && now;
    });
    await this.#acts.click(x, y);
  }

  /** Types into a field, over what stood in it. */
  async fill(css, name, words) {
    await this.press(css, name);
    await this.over(([field]) => field.select(), css, name);
    await this.#acts.type(words);
  }

  /** Presses where the first that is sought lies, whatever is drawn over it. */
  async tap(css) {
    await this.see(css);
    await this.#acts.click(...(await this.over(middle, css)));
  }

  /** Drags the first that is sought, whatever is drawn over it, by pixels of the screen. */
  async drag(css, dx, dy) {
    await this.see(css);
    const [x, y] = await this.over(middle, css);
    const steps = [0, 0.25, 0.5, 0.75, 1];
    await this.#acts.drag(steps.map((part) => [x + dx * part, y + dy * part]));
  }

  /** What a printer would be given, where the engine can be asked for it. */
  get printed() {
    return this.#acts.printed;
  }

  /** Fails when anything went wrong, or was fetched from anywhere else. */
  async assertClean() {
    await this.#note();
    const all = [...this.#faults, ...(await this.#acts.faults())];
    assert.deepEqual(all, [], "the page asked another origin, broke its policy or threw");
  }

  close() {
    return this.#acts.close();
  }

  /** Keeps what was noted, before another page takes this one's place. */
  async #note() {
    this.#faults.push(...(await this.ask(noted)));
  }

  async #wait(what, look) {
    const end = Date.now() + PATIENCE;
    let problem = "";
    while (Date.now() < end) {
      try {
        const found = await look();
        if (found) return found;
        problem = "";
      } catch (error) {
        // A page that is being left cannot be asked.
        problem = `: ${error.message}`;
      }
      await pause(BETWEEN);
    }
    throw new Error(`waited in vain until ${what}${problem}`);
  }
}
