// Measures the search in the worker on the demonstration table: how long until
// its first and its last proposal are there, how many tables it tries a second,
// and how long one slice of it keeps the worker from anything else.

import { calibrate, share } from "./measure.mjs";
import { renderers, slow } from "./slow.mjs";
import { phone } from "./support.mjs";

const SEARCHES = 3;

/** Within the page: when a search was asked for, and each answer to it. */
function watchSearch() {
  const record = { asked: 0, answers: [] };
  globalThis.searchRecord = record;
  const known = new WeakSet();
  const post = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function postMessage(asked, ...rest) {
    if (asked.ask === "search") {
      record.asked = performance.now();
      record.answers = [];
    }
    if (!known.has(this)) {
      known.add(this);
      this.addEventListener("message", ({ data }) => {
        if (data.tell !== "searched") return;
        const found = (record.answers.at(-1)?.found ?? 0) + data.searched.new.length;
        const { spent, through } = data.searched;
        record.answers.push({ at: performance.now() - record.asked, spent, through, found });
      });
    }
    return post.call(this, asked, ...rest);
  };
}

/** Three proposals for the table of the first visit, every thread slowed down. */
export async function search(chromium, url, slowed) {
  const context = await chromium.newContext({ ...phone, serviceWorkers: "block" });
  await context.addInitScript(watchSearch);
  const page = await context.newPage();
  await page.goto(url);
  await page.waitForSelector("html[data-core=ready]");
  await page.locator(".first .solid").tap();
  await page.getByRole("button", { name: "Table", exact: true }).tap();
  await page.getByRole("button", { name: "Undo", exact: true }).tap();
  await page.locator("details.propose summary").tap();
  await page.waitForTimeout(1500);
  const [worker] = page.workers();
  const measure = () => worker.evaluate(calibrate);
  const { unit, goOn } = await slow(await renderers(chromium), slowed, measure);
  try {
    const [first, last, rate, pauses] = [[], [], [], []];
    for (let run = 0; run < SEARCHES; run += 1) {
      await page.getByRole("button", { name: /^Look (for three ways|again)$/ }).tap();
      await page.getByRole("button", { name: "Put them away" }).waitFor({ timeout: 180_000 });
      const answers = await page.evaluate(() => globalThis.searchRecord.answers);
      const end = answers.at(-1);
      if (!end.through || end.found < 3) throw new Error(`${end.found} proposals`);
      first.push(answers.find(({ found }) => found > 0).at);
      last.push(end.at);
      rate.push((1000 * end.spent) / end.at);
      answers.slice(1).forEach(({ at }, n) => pauses.push(at - answers[n].at));
    }
    const row = (what, figure, unitOf) => ({ what, figure, unit: unitOf, calibration: unit });
    return [
      row("search/supper, first proposal, median", share(first, 0.5), "ms"),
      row("search/supper, three proposals, median", share(last, 0.5), "ms"),
      row("search/supper, tables tried a second, median", share(rate, 0.5), "/s"),
      row("search/supper, from answer to answer, p95", share(pauses, 0.95), "ms"),
      row("search/supper, from answer to answer, longest", Math.max(...pauses), "ms"),
    ];
  } finally {
    await goOn();
    await context.close();
  }
}
