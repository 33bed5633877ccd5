// What goes to a printer, from wherever the page stands: the picture with its
// crops, the numbered list, what there is to look at again, and the cautions.
// It is made when printing begins and gone when it ends.

import { signal } from "@preact/signals";
import { options, type JSX } from "preact";
import * as say from "#words";

import type { Layout } from "./core";
import { others, tagged, version } from "./panels/client";
import { running, Turns } from "./panels/order";
import { Cautions } from "./parts/cautions";
import { Whole } from "./parts/kept";
import * as state from "./state";

const printing = signal(false);
const paper = matchMedia("print");
paper.addEventListener("change", () => (paper.matches ? begin() : (printing.value = false)));
addEventListener("beforeprint", begin);
addEventListener("afterprint", () => {
  printing.value = false;
  sheets.value = undefined;
});

/** Draws what is printed at once: a browser may take what stands there when it
 * has told that printing begins. */
function begin(): void {
  let draw: (() => void) | undefined;
  options.debounceRendering = (drawing) => (draw = drawing);
  printing.value = true;
  delete options.debounceRendering;
  draw?.();
}

/** Sheets that are printed in place of all this, at these addresses. */
interface Sheets {
  addresses: string[];
  /** The class that says how large their paper is; none for a picture alone. */
  paper?: string;
}
const sheets = signal<Sheets | undefined>(undefined);

/** Prints a picture alone, at this address. */
export function printSheet(address: string): void {
  sheets.value = { addresses: [address] };
  print();
}

/** Prints pages on paper of this size, each on a sheet of its own. */
export async function printPages(addresses: string[], paper: string): Promise<void> {
  // A browser prints what it has decoded.
  await Promise.all(
    addresses.map((address) => {
      const image = new Image();
      image.src = address;
      return image.decode();
    }),
  );
  sheets.value = { addresses, paper };
  print();
}

/** What presses, unless it is the client who prints. */
function Said(): JSX.Element | null {
  if (state.stage.value === "client") return null;
  const findings = (state.report.value?.findings ?? []).filter(
    ({ state: is, taste }) => !taste && (is === "wont-work" || is === "look-again"),
  );
  return (
    <>
      {findings.length === 0 ? null : (
        <section aria-label={say.findings}>
          <h2>{say.findings}</h2>
          <ul>
            {findings.map(({ key, sentence, state: is }) => (
              <li key={key}>
                {sentence}
                {is === "wont-work" ? <span class="sans"> {say.stateWontWork}</span> : null}
              </li>
            ))}
          </ul>
        </section>
      )}
      <p class="caution">{say.cautionPapers}</p>
      <Cautions of={["camera", "table", "hands", "food"]} />
      {(state.layout.value?.hands ?? []).length === 0 ? null : <p class="caution">{say.cautionHands}</p>}
    </>
  );
}

export function Printed({ layout }: { layout: Layout }): JSX.Element | null {
  if (!printing.value) return null;
  const alone = sheets.value;
  if (alone !== undefined) {
    const { addresses, paper } = alone;
    return (
      <article class={paper === undefined ? "printed" : `printed sheets ${paper}`}>
        {addresses.map((address) => (
          <img key={address} src={address} alt={paper === undefined ? say.guidesOverview : ""} />
        ))}
      </article>
    );
  }
  const also = others(layout);
  return (
    <article class="printed">
      <h1>{layout.title || say.untitledTable}</h1>
      <p>{version(layout)}</p>
      <Whole layout={layout} lines />
      <ol aria-label={say.clientList}>
        {tagged(layout).map(({ number, text }) => (
          <li key={number}>
            <b>{number}</b> {text}
          </li>
        ))}
      </ol>
      {also === "" ? null : <p>{say.clientAlso({ things: also })}</p>}
      {state.stage.value === "client" || (layout.exposures ?? []).length === 0 ? null : (
        <section aria-label={say.runningOrder}>
          <h2>{say.runningOrder}</h2>
          <Turns layout={layout} paper={running()} />
        </section>
      )}
      {state.stage.value === "client" ? <p class="caution">{say.cautionClient}</p> : null}
      <Said />
    </article>
  );
}
