// Outlines at true size, on the paper that is in the printer.

import { signal } from "@preact/signals";
import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import * as say from "#words";

import type { Layout } from "../core";
import { Choice } from "../parts/controls";
import { Save } from "../parts/save";
import * as session from "../session";

/** Breadth and height in mm. */
const SIZES = { a4: [210, 297], letter: [215.9, 279.4] } as const;
const paper = signal<keyof typeof SIZES>("a4");

/** Saves outlines under this name. */
export function Crockery({ layout, name }: { layout: Layout; name: string }): JSX.Element {
  const [wide, high] = SIZES[paper.value];
  const pages = useMemo(() => session.core().crockery(wide, high), [layout, wide]);
  return (
    <section class="panel" aria-label={say.crockery}>
      <h3>{say.crockery}</h3>
      <p class="quiet">{say.crockeryWhat}</p>
      {pages.length === 0 ? (
        <p class="quiet">{say.crockeryNone}</p>
      ) : (
        <>
          <Choice
            name={say.paperSize}
            options={[
              ["a4", say.paperA4],
              ["letter", say.paperLetter],
            ]}
            value={paper.value}
            choose={(size) => (paper.value = size)}
          />
          <p>{say.crockeryPages({ count: pages.length })}</p>
          <Save name={`${name}-crockery`} title={layout.title} pages={() => pages} />
        </>
      )}
    </section>
  );
}
