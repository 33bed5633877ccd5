// The files a paper is saved as.

import type { JSX } from "preact";
import * as say from "#words";

import * as day from "../day/progress";
import { share } from "../export";
import type { Paper } from "../listed";
import * as outputs from "../outputs";
import * as mine from "../mine";
import { Save } from "./save";

interface Own {
  paper: Paper;
  /** Its pages, each an SVG that stands alone. */
  pages: string[];
  /** What its files are called after. */
  name: string;
  title: string;
}

export function PaperFiles({ paper, pages, name, title }: Own): JSX.Element {
  const drawings = async (): Promise<void> => {
    for (const [n, page] of pages.entries()) {
      const file = `${name}-${paper.key}-${n + 1}.svg`;
      await share(new File([page], file, { type: "image/svg+xml" }), title);
    }
  };
  const file = `${name}-${paper.key}`;
  const lists = mine.knowing().sheet_rows(paper.key, day.logged()) as [string, string[][]][];
  const [only] = lists.length === 1 ? lists : [];
  const several = lists.length > 1 && outputs.able ? lists : [];
  return (
    <>
      <button class="word" onClick={() => void drawings()}>
        {say.paperSvg}
      </button>
      <Save name={file} title={title} pages={() => pages} {...(only && { rows: () => only[1] })} />
      {several.map(([list, rows], n) => (
        <Save key={list} name={`${file}-${n + 1}`} title={title} list={list} rows={() => rows} />
      ))}
    </>
  );
}
