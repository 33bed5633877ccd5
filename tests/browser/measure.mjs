// What every measurement uses: shares of a list, a fixed sum, and a thing that
// follows the finger.

const sorted = (numbers) => [...numbers].sort((a, b) => a - b);

/** The number below which `part` of the list lies. */
export function share(numbers, part) {
  if (numbers.length === 0) throw new Error("nothing was measured");
  const all = sorted(numbers);
  return all[Math.min(all.length - 1, Math.floor(part * all.length))];
}

/** A fixed sum, never changed; ms. Runs in a page or in a worker. */
export function calibrate() {
  const times = Array.from({ length: 9 }, () => {
    const start = performance.now();
    let sum = 0;
    for (let step = 0; step < 2_000_000; step += 1) sum = (sum + Math.sqrt(step)) % 1000;
    return sum >= 0 ? performance.now() - start : NaN;
  });
  return times.sort((a, b) => a - b)[4];
}

/** Sends touches; without a place the finger is lifted. */
export const toucher = (session) => (type, x, y) =>
  session.send("Input.dispatchTouchEvent", {
    type, touchPoints: x === undefined ? [] : [{ x, y }],
  });

/** A place in the picture where something follows the finger, found by trying. */
export async function handle(page, touch, first) {
  const box = await page.locator(".picture > svg").first().boundingBox();
  if (box === null) throw new Error("the page shows no picture");
  await page.evaluate(() => {
    globalThis.moves = 0;
    // Of things that are drawn, not of what marks them as chosen.
    const drawn = (change) => change.target.closest("[data-key]") !== null;
    const count = (changes) => (globalThis.moves += changes.filter(drawn).length);
    new MutationObserver(count).observe(document.body, {
      subtree: true, attributes: true, attributeFilter: ["transform"],
    });
  });
  const wanted = first && (await page.locator(first).boundingBox());
  for (const down of [0.5, 0.35, 0.65, 0.25, 0.75]) {
    for (const across of [0.5, 0.35, 0.65, 0.2, 0.8]) {
      const from = wanted ?? box;
      const [x, y] = [from.x + from.width * across, from.y + from.height * down];
      await page.evaluate(() => (globalThis.moves = 0));
      await touch("touchStart", x, y);
      for (let step = 1; step <= 8; step += 1) await touch("touchMove", x + 3 * step, y);
      await page.waitForTimeout(200);
      if ((await page.evaluate(() => globalThis.moves)) > 0) return { x: x + 24, y };
      await touch("touchEnd");
    }
  }
  throw new Error("nothing in the picture follows a finger");
}
