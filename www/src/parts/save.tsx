// What saves a paper as a file: PDF, CSV or calendar, with how far it is and a way out.

import type { JSX } from "preact";
import * as say from "#words";

import type { Entry } from "../dates";
import * as outputs from "../outputs";

interface Own {
  /** The file's name without its ending. */
  name: string;
  title: string;
  /** The paper's drawings, page by page. */
  pages?: () => readonly string[];
  /** What the list is called, where a paper has several. */
  list?: string;
  /** The paper's list, its heading first. */
  rows?: () => readonly (readonly string[])[];
  /** Its days, and when the file is made. */
  calendar?: () => { days: readonly Entry[]; stamp: readonly number[] };
}

/** Saves a paper as PDF, its list as CSV, its days as a calendar. */
export function Save({ name, title, pages, list, rows, calendar }: Own): JSX.Element {
  if (!outputs.able) return <p class="quiet">{say.outputSingle}</p>;
  const files = [`${name}.pdf`, `${name}.csv`, `${name}.ics`] as const;
  const busy = outputs.making.value;
  const told = outputs.told.value;
  const mine = (file: string | undefined): boolean => files.some((each) => each === file);
  return (
    <>
      <div class="steps">
        {pages === undefined ? null : (
          <button
            class="word"
            onClick={() =>
              void outputs.make(files[0], title, () => ({ make: "pdf", title, pages: pages() }))
            }
          >
            {say.outputPdf}
          </button>
        )}
        {rows === undefined ? null : (
          <button
            class="word"
            onClick={() => void outputs.make(files[1], title, () => ({ make: "csv", rows: rows() }))}
          >
            {list === undefined ? say.outputCsv : say.outputCsvOf({ list })}
          </button>
        )}
        {calendar === undefined ? null : (
          <button
            class="word"
            onClick={() => void outputs.make(files[2], title, () => ({ make: "ics", ...calendar() }))}
          >
            {say.outputIcs}
          </button>
        )}
        {busy !== undefined && mine(busy.name) ? (
          <>
            <progress value={busy.done} aria-label={say.outputProgress} />
            <button class="word" onClick={outputs.stop}>
              {say.outputStop}
            </button>
          </>
        ) : null}
      </div>
      {told !== undefined && mine(told.name) ? (
        <>
          <p role="status">{told.text}</p>
          {told.print ? (
            <button class="word" onClick={() => print()}>
              {say.outputPrint}
            </button>
          ) : null}
        </>
      ) : null}
    </>
  );
}
