// The worker that makes papers: drawings into a PDF page by page, lists into CSV
// and out of it, days into a calendar.

import { initSync, csv, Document, ics, Listed } from "#outputs";

import type { OutputAnswer, OutputAsk, ReadList } from "./outputs";

const tell = (answer: OutputAnswer): void => postMessage(answer);

/** The pages of a PDF one after another: what ends the worker comes between two. */
function pdf(title: string, pages: readonly string[]): OutputAnswer {
  const document = new Document();
  for (const [n, page] of pages.entries()) {
    tell({ done: n / pages.length });
    document.page(page);
  }
  const made = document.finish(title);
  const bytes = made.bytes as Uint8Array<ArrayBuffer>;
  return { file: new Blob([bytes], { type: "application/pdf" }), missing: made.missing };
}

/** A list as its rows. */
function list(bytes: Uint8Array): ReadList {
  const read = new Listed(bytes);
  const why = read.faults();
  const faults = [...read.fault_lines()].map((line, n): [number, string] => [line, why[n] ?? ""]);
  return { head: read.head(), cells: read.cells(), lines: read.lines(), faults };
}

function make(asked: OutputAsk): OutputAnswer {
  initSync({ module: asked.module });
  if (asked.make === "pdf") return pdf(asked.title, asked.pages);
  if (asked.make === "ics") {
    const cells = asked.days.flatMap((of) => [of.uid, of.day, of.next, of.summary, of.description]);
    const text = ics(cells, Uint16Array.from(asked.stamp));
    return { file: new Blob([text], { type: "text/calendar" }), missing: "" };
  }
  if (asked.make === "list") return { list: list(asked.bytes) };
  const columns = asked.rows[0]?.length ?? 0;
  const bytes = csv(asked.rows.flat(), columns) as Uint8Array<ArrayBuffer>;
  return { file: new Blob([bytes], { type: "text/csv" }), missing: "" };
}

addEventListener("message", ({ data }: MessageEvent<OutputAsk>) => {
  try {
    tell(make(data));
  } catch (error) {
    tell({ fault: error instanceof Error ? error.message : String(error) });
  }
});
