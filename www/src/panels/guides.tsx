// A mask guide for each exposure, and the sheet that shows where each goes.

import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { JSX } from "preact";
import * as say from "#words";

import type { Wanted } from "../asked";
import type { Layout } from "../core";
import { share } from "../export";
import * as guides from "../guides";
import { printSheet } from "../printed";
import { pictureFile } from "../raster";
import * as session from "../session";

/** A megabyte, as files are told. */
const MEGA = 1e6;

/** Saves the guides under this name. */
export function Guides({ layout, name }: { layout: Layout; name: string }): JSX.Element {
  const { files, pixels, told } = session.core().guides() as Wanted;
  const [wide, high] = pixels.map(String) as [string, string];
  const size = { count: files.length, wide, high };
  return (
    <section class="panel" aria-label={say.guides}>
      <h3>{say.guides}</h3>
      <p class="quiet">{say.guidesWhat}</p>
      {files.length < 2 ? (
        <p class="quiet">{say.guidesNone}</p>
      ) : (
        <>
          <p>{told ? say.guidesSize(size) : say.guidesSizeUsual(size)}</p>
          <Making layout={layout} name={name} count={files.length} />
          <Overview layout={layout} />
        </>
      )}
    </section>
  );
}

interface Own {
  layout: Layout;
  name: string;
  count: number;
}

/** Makes them, and hands them out. */
function Making({ layout, name, count }: Own): JSX.Element {
  const done = guides.making.value;
  const made = guides.made.value;
  const save = async (zip: Blob): Promise<void> => {
    const file = new File([zip], `${name}-mask-guides.zip`, { type: zip.type });
    await share(file, layout.title);
  };
  const mega = made === undefined ? "" : (made.zip.size / MEGA).toFixed(1);
  return (
    <>
      {done === undefined ? (
        <button class="tape" onClick={guides.make}>
          {say.guidesMake}
        </button>
      ) : (
        <div class="steps">
          <progress value={done} aria-label={say.guidesProgress} />
          <button class="word" onClick={guides.stop}>
            {say.guidesStop}
          </button>
        </div>
      )}
      <p role="status">
        {made === undefined ? "" : made.of === layout ? say.guidesReady({ count, mega }) : say.guidesOlder}
      </p>
      {made === undefined ? null : (
        <button class="word" onClick={() => void save(made.zip)}>
          {say.guidesSave}
        </button>
      )}
    </>
  );
}

/** Where each goes, drawn when it is asked for. */
function Overview({ layout }: { layout: Layout }): JSX.Element {
  const address = useSignal("");
  useEffect(() => () => URL.revokeObjectURL(address.value), [layout]);
  useEffect(() => void (address.value = ""), [layout]);
  const show = (): void => {
    const drawn = session.core().guide_sheet();
    if (drawn !== undefined) address.value = URL.createObjectURL(pictureFile(drawn));
  };
  return address.value === "" ? (
    <button class="word" onClick={show}>
      {say.guidesShow}
    </button>
  ) : (
    <>
      <img class="overview" src={address.value} alt={say.guidesOverview} />
      <button class="word" onClick={() => printSheet(address.value)}>
        {say.guidesPrint}
      </button>
    </>
  );
}
