// The main job from end to end in Firefox and WebKitGTK, the page as one file
// from a disk, and what a printer is given. What was done is written to
// tests/reports/engines.md.

import { after, test } from "node:test";

import { singleFile } from "../support.mjs";
import * as job from "./job.mjs";
import { paperOnPaper, tableOnPaper } from "./paper.mjs";
import { write } from "./report.mjs";
import { inEach } from "./setup.mjs";

/** Of each engine: its name, its version and the steps that were done in it. */
const done = [];
/** How many tests there are, and how many came to their end. */
const tests = { all: 0, ended: 0 };

inEach(({ name, site, visitor, version }) => {
  const steps = [];
  /** Does a step and keeps what it tells. */
  const step = async (what, doing) => {
    const told = await doing.catch((error) => {
      throw new Error(`${what}: ${error.message}`, { cause: error });
    });
    steps.push([what, told]);
    console.log(`${name}: ${what}: ${told}`);
    return told;
  };
  const whole = (what, run) => {
    tests.all += 1;
    test(what, async () => {
      await run();
      tests.ended += 1;
    });
  };
  after(() => done.push({ name, version: version(), steps }));

  whole("from the first sentence to the client's answer on the table", async () => {
    const page = await visitor();
    await page.open(site.url);
    await step("the first cure", job.firstCure(page));
    await step("an own table laid", job.ownTable(page));
    await step("a dish added", job.dishAdded(page));
    await step("it is moved", job.moved(page));
    await step("a pair of hands", job.hands(page));
    await step("a crop", job.crop(page));
    await step("undo and redo", job.undoAndRedo(page));
    await step("all of it after a reload", job.reloaded(page));
    await step("every paper opened", job.papers(page));
    await step("files made", job.files(page));
    const address = await job.link(page);
    const client = await visitor();
    await step("the client's view of the link", job.clientSees(client, address, { title: "My table", crops: 1 }));
    const answer = await job.reply(client);
    await client.assertClean();
    await step("the client's reply on the table", job.answered(page, answer));
    await step("the table printed", tableOnPaper(page));
    await step("a paper printed", paperOnPaper(page));
    await page.assertClean();
  });

  whole("as one file from a disk", async () => {
    const page = await visitor();
    await page.open(singleFile);
    await step("from a disk: the first cure", job.firstCure(page));
    await step("from a disk: an own table laid", job.ownTable(page));
    await step("from a disk: a pair of hands", job.hands(page));
    await step("from a disk: a crop", job.crop(page));
    await step("from a disk: undo and redo", job.undoAndRedo(page));
    await step("from a disk: all of it after a reload", job.reloaded(page));
    await step("from a disk: every paper opened", job.papers(page));
    await step("from a disk: files made", job.files(page, ["png"]));
    await page.assertClean();
  });
});

after(() => {
  if (tests.ended === tests.all) write(done);
});
