// The files a paper is saved as.

import type { JSX } from "preact";
import * as say from "#words";

import { share } from "../export";
import type { Paper } from "../listed";

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
  return (
    <button class="word" onClick={() => void drawings()}>
      {say.paperSvg}
    </button>
  );
}
