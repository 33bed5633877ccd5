// The worker: an instance of the core of its own, so that readings never hold
// up the hand that drags. It follows the page edit by edit and reads the newest.

import { initSync, Planner } from "#core";

import type {
  Answer, Arranged, ArrangedAnswer, Ask, Compared, ComparedAnswer, GuideAnswer, Live, Marks, Search,
  Searched, View,
} from "./asked";
import type { Report } from "./core";
import { make } from "./guide-files";

let planner: Planner;
let revision = 0;
let shown: View = { noHands: false, crop: 0, key: "", crops: -1, lens: false };
let due = false;
/** Whether the newest layout is being read. */
let begun = false;
/** How long it is read at a time before anything else is heard, ms. */
const SLICE = 20;
/** The same of a search, whose steps are short, ms. */
const SEARCHES = 35;

/** The search asked for last; 0 for none. */
let searching = 0;

const tell = (answer: Answer | ArrangedAnswer | ComparedAnswer | GuideAnswer): void =>
  postMessage(answer);

function marks(): Marks {
  return { numbers: planner.marks_numbers(), words: planner.marks_words() };
}

/** Reads from the beginning once all that was asked up to now is taken in. */
function soon(): void {
  begun = false;
  if (due) return;
  due = true;
  setTimeout(read);
}

/** Reads a little, and the rest later: what is asked meanwhile goes first. */
function read(): void {
  if (!begun) {
    planner.begin_reading(shown.noHands, shown.crop);
    begun = true;
    return void setTimeout(read);
  }
  const until = performance.now() + SLICE;
  const report = planner.read_on(() => performance.now() < until) as Report | undefined;
  if (report === undefined) return void setTimeout(read);
  due = false;
  for (const finding of report.findings) {
    if (finding.remedy) finding.remedy.record = planner.remedy_record(finding.key);
  }
  planner.see_through(shown.lens);
  planner.pick_marks(shown.key, shown.crops);
  tell({ tell: "read", revision, view: shown, report, marks: marks() });
}

/** The newest table to be arranged. */
let arranging = 0;

/** Arranges a table one way, and the others later: what is asked meanwhile goes first. */
function arrange(serial: number, wish: unknown, n: number): void {
  if (serial !== arranging) return;
  const found = planner.arranged(wish, n) as Arranged;
  tell({ tell: "arranged", serial, ...found });
  if (found.more) setTimeout(() => arrange(serial, wish, n + 1));
}

/** Begins a search once what is open has been read. */
function search(serial: number, wanted: Search): void {
  if (serial !== searching) return;
  if (due) return void setTimeout(() => search(serial, wanted), SLICE);
  if (planner.begin_search(wanted)) searchOn(serial);
}

/** Searches a little, and the rest later: what is asked meanwhile goes first. */
function searchOn(serial: number): void {
  if (serial !== searching) return;
  const until = performance.now() + SEARCHES;
  const searched = planner.search_on(() => performance.now() < until) as Searched | undefined;
  // An edit has dropped it.
  if (searched === undefined) return;
  tell({ tell: "searched", revision, serial, searched });
  if (searched.through) planner.drop_search();
  else setTimeout(() => searchOn(serial));
}

function take(asked: Ask): void {
  switch (asked.ask) {
    case "core":
      initSync({ module: asked.module });
      planner = new Planner();
      return;
    case "open":
      planner.open_json(asked.file);
      revision = asked.revision;
      return soon();
    case "guides":
      planner.open_json(asked.file);
      void make(planner, tell).catch((error: unknown) =>
        tell({ tell: "guides", done: 0, fault: String(error) }),
      );
      return;
    case "compare":
      try {
        planner.open_json(asked.after);
        tell({ tell: "compared", compared: planner.compared(asked.before) as Compared });
      } catch (error) {
        tell({ tell: "compared", fault: error instanceof Error ? error.message : String(error) });
      }
      return;
    case "arrange":
      arranging = asked.serial;
      return void setTimeout(() => arrange(asked.serial, asked.wish, 0));
    case "search":
      searching = asked.serial;
      if (asked.revision === revision) search(asked.serial, asked.wanted);
      return;
    case "no-search":
      searching = 0;
      planner.drop_search();
      return;
    case "edit":
      planner.follow(asked.record);
      revision = asked.revision;
      return soon();
    case "view": {
      const again = asked.noHands !== shown.noHands || asked.crop !== shown.crop;
      shown = asked;
      if (again || due) return revision > 0 ? soon() : undefined;
      planner.see_through(shown.lens);
      planner.pick_marks(shown.key, shown.crops);
      return tell({ tell: "marks", revision, marks: marks() });
    }
    case "drag": {
      const { ids, alone, dx, dy, halfDegrees, serial } = asked;
      if (asked.revision !== revision || due) return;
      const live = planner.live(
        shown.noHands, Uint16Array.from(ids), alone, dx, dy, halfDegrees,
      ) as Live | undefined;
      if (live !== undefined) tell({ tell: "live", revision, serial, live, marks: marks() });
    }
  }
}

addEventListener("message", (event: MessageEvent<Ask>) => take(event.data));
