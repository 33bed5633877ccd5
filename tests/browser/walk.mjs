// A walk past every screen of the page. What is seen to on each is the caller's,
// and so is how the page speaks: what is pressed is named in plain words and
// found as `said` puts them.

import { painted } from "./support.mjs";

/** Opens everything that unfolds, also what that brings. */
export async function unfold(page) {
  for (let n = 0; n < 3; n += 1) {
    await page.locator("details:not([open])").evaluateAll((all) => all.forEach((each) => (each.open = true)));
    await page.waitForTimeout(30);
  }
}

/** A photo of two discs on a dark board, with a sheet of white as large as a card. */
export async function photo(page) {
  const bytes = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(900, 600);
    const set = canvas.getContext("2d");
    for (const [tone, ...box] of [["#423e39", 0, 0, 900, 600], ["#f4f2ee", 40, 60, 240, 151]]) {
      set.fillStyle = tone;
      set.fillRect(...box);
    }
    for (const [x, y, tone] of [[600, 300, "#b9692f"], [300, 450, "#c9b79a"]]) {
      set.fillStyle = tone;
      set.beginPath();
      set.arc(x, y, 80, 0, 7);
      set.fill();
    }
    return [...new Uint8Array(await (await canvas.convertToBlob({ type: "image/png" })).arrayBuffer())];
  });
  return { name: "set.png", mimeType: "image/png", buffer: Buffer.from(bytes) };
}
const CARD = [[40, 60], [280, 60], [280, 211], [40, 211]];

/** Loads that photo and taps these places of it, px. */
async function tapped(page, input, shot, places) {
  await input.setInputFiles(await photo(page));
  await shot.waitFor();
  for (const [x, y] of places) {
    await shot.scrollIntoViewIfNeeded();
    const box = await shot.locator("> canvas").boundingBox();
    await page.mouse.click(box.x + (box.width * x) / 900, box.y + (box.height * y) / 600);
  }
}

const file = (name, mimeType, text) => ({ name, mimeType, buffer: Buffer.from(text) });

/** What can be done on a page that speaks so. */
export function walker(page, look, said = (words) => words) {
  const find = (name, within = page) => within.getByRole("button", { name: said(name), exact: true });
  const press = (name, within = page) => find(name, within).first().click();
  const region = (name) => page.getByRole("region", { name: said(name), exact: true });
  const fold = (name) =>
    page.locator("details", { has: page.locator("> summary", { hasText: said(name) }) }).last();
  const thing = (name) => page.locator("ul.things button", { hasText: name }).first();
  const chosen = page.locator(".chosen-strip");
  const undone = () => chosen.locator(".line button").first().click();

  const walk = {
    press,
    region,
    async go(place) {
      await press(place, page.locator(".places"));
      await painted(page);
    },

    /** From the first sight to the first table at work. */
    async begun() {
      await page.locator(".first .solid").waitFor();
      await look("the first visit");
      await page.locator(".first .solid").click();
      await page.locator(".find .big").waitFor();
      await look("the first table cured");
      await press("Guide");
      await page.locator("dialog.guide svg").first().waitFor();
      await look("the guide");
      await press("Close");
      await walk.go("Table");
      await page.locator(".find").first().waitFor();
    },

    /** Findings, a search, what is chosen and what is picked. */
    async table() {
      await page.locator(".find > button").first().click();
      await page.locator(".working").waitFor();
      await unfold(page);
      await look("the table with a finding open");
      await press("Look for three ways");
      await look("a search under way");
      await page.locator(".looking").waitFor({ state: "detached", timeout: 60_000 });
      await page.locator(".way > button").first().click();
      await look("a proposal");
      await press("Put them away");
      await thing("mussel pot").click();
      await chosen.waitFor();
      await unfold(page);
      const own = page.locator(".chosen-strip ~ details .photo").first();
      await tapped(page, own.locator("input[type=file]"), own.locator(".shot"), [[600, 300], [160, 130]]);
      await look("a dish chosen, a colour off a photo");
      await undone();
      await thing("oat runner").click();
      await unfold(page);
      await look("a cloth chosen");
      await undone();
      await press("Pick several");
      await press("Pick everything");
      await unfold(page);
      await look("everything picked");
      await undone();
      await press("Enlarge the picture");
      await press("in grey");
      await press("through the lens");
      await look("the picture enlarged, in grey, through the lens");
      await press("from above");
      await press("as it is");
      // Where the screen has changed meanwhile, it is whole already.
      if ((await find("Whole picture").count()) > 0) await press("Whole picture");
    },

    async adding() {
      await press("Add a thing");
      await page.locator(".groups button").first().click();
      await page.locator(".finds .star").first().click();
      await look("a group of things to add");
      await page.locator("input[type=search]").fill("zzzz");
      await look("nothing found");
      await page.locator("input[type=search]").fill("bowl");
      await unfold(page);
      const own = page.locator("form.panel");
      await press("traced over a photo", own);
      await tapped(page, own.locator("input[type=file]"), own.locator(".shot"), [[520, 300], [600, 220], [680, 300]]);
      await own.locator(".shot").press("ArrowRight");
      await look("things found, and an outline traced");
      await press("Done adding");
    },

    /** Hands, camera, stand, light and crops. */
    async places() {
      await walk.go("Hands");
      await unfold(page);
      await look("hands");
      await page.getByRole("button", { name: "1", exact: true }).first().click();
      await page.locator(".panel .panel").first().waitFor();
      await unfold(page);
      await look("one exposure");
      await press("all together");
      await page.locator("ul.things button").first().click();
      await unfold(page);
      await look("a hand and whose it is");
      await walk.go("Camera & light");
      await unfold(page);
      await look("the camera");
      await press("Arm and stand");
      await look("the stand");
      await press("Light");
      await press("Add a white card");
      await press("glare");
      await look("the light and a card");
      await walk.go("Crops");
      await unfold(page);
      await page.locator(".keeps button").first().click();
      await look("crops");
      await page.locator(".keeps button").first().click();
    },

    /** Everything under the papers; leaves a version and a link, and returns that. */
    async papers() {
      await walk.go("Papers");
      const sheets = region("Papers to print");
      await unfold(page);
      await press("Prop pull list", sheets);
      await page.locator(".pages img").first().waitFor();
      await look("papers unfolded, and one of them");
      const shelf = fold("Your shelf");
      await shelf.locator("input[type=search]").first().fill("tumbler");
      await shelf.locator(".finds button").first().click();
      await page.locator(".owned li").first().waitFor();
      const list = "name,diameter (cm),count\ncandle plate,22,2\nodd one,two dozen,1\n";
      await shelf.locator('input[accept^=".csv"]').setInputFiles(file("list.csv", "text/csv", list));
      await shelf.locator(".panel[role=status]").waitFor();
      const sized = [...CARD, [520, 300], [680, 300]];
      await tapped(page, shelf.locator('input[accept^="image"]'), shelf.locator(".shot"), sized);
      await unfold(page);
      await look("the shelf, a list, a size from a photo");
      await press("summer");
      await fold("Another season").locator(".listed").waitFor();
      await look("another season");
      const test = region("Plan over a test photo");
      const first = test.locator("input[type=file]").first();
      await tapped(page, first, test.locator(".shot"), [[150, 120], [750, 132]]);
      await look("the plan over a test photo");
      await press("Show where each goes");
      await press("Keep this as a version");
      await page.locator(".versions li").first().waitFor();
      await press("Make the link");
      await page.locator("input.link").waitFor();
      await unfold(page);
      await look("mask guides, a version and a link");
      const link = await page.locator("input.link").inputValue();
      const broken = { format: "overspread-layout", version: 1, id: "zz", table: { width: -4 } };
      await page.locator('input[accept^=".json"]').setInputFiles(file("broken.json", "application/json", JSON.stringify(broken)));
      await page.locator(".notice .problems").waitFor();
      await look("a file with faults");
      await press("Understood");
      return link;
    },

    async beside() {
      await page.locator(".versions .steps button").first().click();
      await page.locator(".beside .scores").waitFor();
      await unfold(page);
      await look("two layouts beside each other");
      await page.locator(".beside .head button").click();
    },

    /** The day: what is set ready, and a frame shot. */
    async day() {
      await press("Begin the shoot-day steps");
      await page.locator(".day .ticks input").first().check();
      await look("a step of the day");
      while ((await page.locator(".day .stepper").count()) === 0) {
        await page.locator(".day .ticks input").first().check();
        await press("Next");
      }
      await unfold(page);
      await look("a frame of the day, with its log");
      await press("Leave the steps");
    },

    /** A new table: a starter, an empty board, dishes of one's own, arranged another way. */
    async anew() {
      const fresh = async () => {
        await walk.go("Papers");
        await press("Lay a new table");
        await page.locator(".starters button").first().waitFor();
      };
      await fresh();
      await look("a new table");
      await press("An empty board");
      await unfold(page);
      // The end, as what stays in sight lies over the rest elsewhere.
      await page.evaluate(() => scrollTo(0, document.body.scrollHeight));
      await look("an empty board");
      await press("Back to the open table");
      await fresh();
      await press("From my dishes");
      for (const n of [0, 3, 4]) {
        await page.locator(".yours .panel > .field").last().locator(".steps button").nth(n).click();
      }
      await page.locator(".starters.three li").nth(2).waitFor();
      await look("a table of one’s own");
      await press("Lay the table");
      await press("Arrange anew");
      await page.locator(".starters.three li:not(.stale) button").first().waitFor();
      await look("the table another way");
    },

    /** A link as its client sees it, and the reply; returns the answer. */
    async client() {
      await page.locator(".client .solid").waitFor();
      await look("the client’s view");
      await press("Reply");
      await press("yes with changes");
      await press("Remark on a place");
      await page.locator(".writing textarea").fill("less oil");
      await look("a remark being written");
      await page.locator(".writing .tape").click();
      await look("the reply");
      return (await page.locator("input.link").last().inputValue()).split("#")[1];
    },

    /** That answer, come back to the table it is about. */
    async answered(answer) {
      await page.evaluate((hash) => (location.hash = hash), answer);
      await page.locator(".arrived .changed, .arrived section .quiet").first().waitFor();
      await look("an answer that came");
      await press("Put it on the table");
      await page.locator(".remarks input").first().waitFor();
      await look("remarks on the table");
    },
  };
  return walk;
}

/**
 * Past every screen, from the first visit in `page`; `looks` says of a page what
 * is to be seen to on each of its screens.
 */
export async function everything(page, looks, said = (words) => words) {
  const walk = walker(page, looks(page), said);
  await walk.begun();
  await walk.table();
  await walk.adding();
  await walk.places();
  const link = await walk.papers();
  await walk.beside();
  await walk.day();
  const client = await page.context().newPage();
  await client.goto(link);
  const answer = await walker(client, looks(client), said).client();
  await client.close();
  await walk.answered(answer);
  await walk.anew();
}
