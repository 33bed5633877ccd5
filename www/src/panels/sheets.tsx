// Papers to print: which one, on what, how its pages will look.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import { useEffect, useMemo } from "preact/hooks";
import * as say from "#words";

import type { Layout } from "../core";
import * as day from "../day/progress";
import type { Paper } from "../listed";
import { Choice } from "../parts/controls";
import { PaperFiles } from "../parts/paper-files";
import { printPages } from "../printed";
import * as mine from "../mine";
import * as session from "../session";

type Size = "a4" | "letter";
const KEPT = "paper-size";

/** The paper last printed on; where nothing is kept, what goes with the units. */
function usual(layout: Layout): Size {
  try {
    const kept = localStorage.getItem(KEPT);
    if (kept === "a4" || kept === "letter") return kept;
  } catch {
    // Nothing may be read here.
  }
  return layout.units === "in" ? "letter" : "a4";
}

function keep(size: Size): void {
  try {
    localStorage.setItem(KEPT, size);
  } catch {
    // It holds for as long as the page is open.
  }
}

/** The pages of one paper, made while it is looked at. */
function Pages({ layout, paper, size, name }: {
  layout: Layout;
  paper: Paper;
  size: Size;
  name: string;
}): JSX.Element {
  const pages = useMemo(
    () => mine.knowing().sheet_pages(paper.key, size === "letter", day.logged()),
    [layout, paper.key, size, mine.mine.value, day.progress.value],
  );
  const addresses = useMemo(
    () => pages.map((page) => URL.createObjectURL(new Blob([page], { type: "image/svg+xml" }))),
    [pages],
  );
  useEffect(() => () => addresses.forEach((address) => URL.revokeObjectURL(address)), [addresses]);
  return (
    <>
      <div class="steps">
        <button
          class="tape"
          onClick={() => void printPages(addresses, paper.wide ? `${size}-wide` : size)}
        >
          {say.paperSend}
        </button>
        <PaperFiles paper={paper} pages={pages} name={name} title={layout.title} />
      </div>
      <div class="pages">
        {addresses.map((address, n) => (
          <img
            key={address}
            src={address}
            alt={say.paperPage({
              name: paper.name,
              page: String(n + 1),
              pages: String(addresses.length),
            })}
          />
        ))}
      </div>
    </>
  );
}

export function SheetsPart({ layout, name }: { layout: Layout; name: string }): JSX.Element {
  const papers = session.core().sheets() as Paper[];
  const chosen = useSignal("");
  const size = useSignal(usual(layout));
  const paper = papers.find(({ key }) => key === chosen.value);
  return (
    <section class="panel" aria-label={say.papersPrint}>
      <h3>{say.papersPrint}</h3>
      <Choice
        name={say.paperSize}
        options={[
          ["a4", say.paperA4],
          ["letter", say.paperLetter],
        ]}
        value={size.value}
        choose={(value) => {
          size.value = value;
          keep(value);
        }}
      />
      <Choice
        name={say.paperWhich}
        options={papers.map(({ key, name: called }) => [key, called] as const)}
        value={chosen.value}
        choose={(key) => (chosen.value = key === chosen.value ? "" : key)}
      />
      {paper === undefined ? null : (
        <Pages key={paper.key} layout={layout} paper={paper} size={size.value} name={name} />
      )}
    </section>
  );
}
