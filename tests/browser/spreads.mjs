// Ten spreads of our own invention, each laid on a phone by touch from the
// first visit on, counted touch by touch and saved as pictures to be looked at
// beside each other. A letter typed counts as a touch.
//
// `cargo xtask deep spreads`

import assert from "node:assert/strict";
import { mkdir, readFile, stat } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

import { browser, phone, serve } from "./support.mjs";

/** A spread that takes more is too much work. */
const MOST = 100;

/** The most the picture of all may weigh, so that the repository stays light. */
const HEAVIEST = 400_000;

const fileOf = (title) => `${title.toLowerCase().replaceAll(" ", "-")}.png`;

/**
 * Title; surface; round or not; steps wider and deeper than what is offered;
 * frame; fewer people than four; dishes, the hero first; things found by
 * these letters; what hands do.
 */
const SPREADS = [
  ["Pizza night", "walnut", false, 0, 0, "3:2", -4, ["pizza on a board", "leaf salad", "black olives", "tomato salad"], [["beer", "glass of beer"], ["beer", "glass of beer"], ["rocke", "rocket leaves"], ["chilli f", "chilli flakes"]], "reach"],
  ["Sunday lunch", "light oak", false, 2, 2, "3:2", -4, ["roast chicken", "roast potatoes", "roast carrots", "green beans", "bowl of soup"], [["sauce b", "sauce boat"], ["red wine", "large glass of red wine"], ["carving", "carving fork"], ["bay", "bay leaves"]], "hold a dish"],
  ["Pancake morning", "white painted board", false, -4, -2, "4:5", -4, ["pancakes", "berries", "croissants", "halved grapefruit"], [["cup and", "cup and saucer"], ["honey", "honey"], ["butter d", "butter dish"], ["petal", "flower petals"]], "pour"],
  ["Sushi on slate", "black-stained board", false, -3, -2, "1:1", -4, ["rice rolls on slate", "basket of dumplings", "noodles", "prawns"], [["chopst", "chopsticks"], ["tea gl", "glass of mint tea"], ["dip", "dip bowl"], ["seeds", "seeds"]], "reach"],
  ["Oyster bar", "polished pale marble", true, -4, 0, "1:1", -4, ["oysters", "dark-crusted loaf", "halved figs"], [["flute", "flute"], ["flute", "flute"], ["lemon sl", "slices of lemon"], ["butter d", "butter dish"], ["peppercorn", "peppercorns"]], "squeeze lemon"],
  ["Curry for four", "terracotta", false, 0, 0, "3:2", 0, ["curry", "rice", "flatbreads", "bean stew"], [["chilli f", "chilli flakes"], ["herb le", "picked herb leaves"]], "tear bread"],
  ["Cake table", "blush painted board", true, -3, 0, "4:5", -4, ["chocolate cake", "fruit tart", "meringues", "berries"], [["teacup", "teacup and saucer"], ["teacup", "teacup and saucer"], ["bunch", "bunch of flowers"], ["cake sl", "cake slice"], ["icing", "icing sugar"]], "reach"],
  ["Garden board", "scrubbed pine", false, 1, 0, "16:9", -4, ["cheese on a board", "halved figs", "dark-crusted loaf", "black olives", "hummus"], [["grapes", "grapes"], ["crack", "crackers"], ["cured", "slices of cured ham"], ["white w", "glass of white wine"], ["nuts", "nuts"]], "reach"],
  ["Pasta at home", "aged copper sheet", false, -2, 0, "3:2", -4, ["spaghetti", "tomato salad", "flat oil bread", "meatballs in sauce"], [["red wine", "large glass of red wine"], ["red wine", "large glass of red wine"], ["garlic", "garlic bulbs"], ["pepper m", "pepper mill"], ["cherry t", "cherry tomatoes"]], "sprinkle"],
  ["Autumn fire", "slate", false, 2, 1, "2:3", -4, ["sliced steak", "roast pumpkin", "grilled peppers", "green beans", "bean stew"], [["pillar", "pillar candle"], ["steak k", "steak knife"], ["red oni", "red onion rings"], ["salt f", "salt flakes"], ["tumbler of", "tumbler of red wine"]], "reach"],
];

async function lay(chromium, url, folder, spread) {
  const [title, surface, round, wider, deeper, frame, people, dishes, things, action] = spread;
  const context = await chromium.newContext({ ...phone, reducedMotion: "reduce", acceptDownloads: true });
  const page = await context.newPage();
  const faults = [];
  page.on("pageerror", (error) => faults.push(error.message));
  let touches = 0;
  const tap = async (locator, times = 1) => {
    for (let time = 0; time < times; time += 1) {
      touches += 1;
      await locator.tap();
    }
  };
  const button = (name) => page.getByRole("button", { name, exact: true });
  await page.goto(url);
  await page.waitForSelector("html[data-core=ready]");
  await tap(page.locator(".solid"));
  await page.locator(".find .big").waitFor();
  await tap(button("Now yours"));
  if (round) await tap(button("round"));
  await tap(page.getByRole("button", { name: wider < 0 ? /cm narrower/ : /cm wider/ }), Math.abs(wider));
  if (!round) {
    await tap(page.getByRole("button", { name: deeper < 0 ? /cm shallower/ : /cm deeper/ }), Math.abs(deeper));
  }
  await tap(page.locator("details.surfaces summary"));
  await tap(page.getByRole("list", { name: "Surfaces" }).getByRole("button", { name: surface, exact: true }));
  if (frame !== "3:2") await tap(button(frame === "1:1" ? "square" : frame));
  await tap(button("One fewer"), -people);
  await tap(page.getByRole("button", { name: /more dishes$/ }).first());
  for (const dish of dishes) await tap(button(dish));
  await tap(button("Lay the table"));
  await page.getByRole("region", { name: "Findings" }).waitFor();
  await tap(button("Add a thing"));
  for (const [letters, name] of things) {
    const field = page.getByRole("searchbox");
    await tap(field);
    await field.fill(letters);
    touches += letters.length;
    await tap(page.locator(".finds li button").filter({ hasText: name }).first());
  }
  await tap(button("Done adding"));
  await tap(button("Hands"));
  await tap(button(action));
  await page.waitForTimeout(500);
  await tap(button("Papers"));
  const saved = page.waitForEvent("download");
  await tap(button("Picture for a chat"));
  await (await saved).saveAs(join(folder, fileOf(title)));
  await context.close();
  assert.deepEqual(faults, [], `${title}: errors`);
  return touches;
}

/** All pictures beside each other, for the README. */
async function together(chromium, folder) {
  const pictures = [];
  for (const [title] of SPREADS) {
    const bytes = await readFile(join(folder, fileOf(title)));
    pictures.push(`<img src="data:image/png;base64,${bytes.toString("base64")}" alt="">`);
  }
  const page = await chromium.newPage({ viewport: { width: 1000, height: 520 } });
  const style = "margin:0;background:#f3ecdd;display:grid;grid-template-columns:repeat(5,1fr);gap:8px";
  await page.setContent(`<body style="${style}"><style>img{width:100%;height:256px;object-fit:contain}</style>${pictures.join("")}`);
  const path = fileURLToPath(new URL("../../www/shots/ten-spreads.png", import.meta.url));
  await page.screenshot({ path });
  const { size } = await stat(path);
  assert.ok(size < HEAVIEST, `ten-spreads.png weighs ${size} of ${HEAVIEST} bytes`);
}

const folder = process.argv[2];
await mkdir(folder, { recursive: true });
const site = await serve();
const chromium = await browser();
try {
  for (const spread of SPREADS) {
    const touches = await lay(chromium, site.url, folder, spread);
    console.log(`${String(touches).padStart(4)} touches  ${spread[0]}`);
    assert.ok(touches <= MOST, `${spread[0]} took ${touches} touches`);
  }
  await together(chromium, folder);
} finally {
  await chromium.close();
  site.stop();
}
