// Crops: what each placement keeps of the picture.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import * as say from "#words";

import { act } from "../acts";
import type { Crop, Id, Layout, Pair } from "../core";
import { Choice, Field, Panel, Stepper } from "../parts/controls";
import { Kept } from "../parts/kept";
import { TwoNumbers } from "../parts/two";
import { crop as view, fault, layout as open, marking, report } from "../state";
import { length } from "../units";

const USUAL: readonly (readonly [string, [number, number]])[] = [
  [say.crop45, [4, 5]],
  [say.crop916, [9, 16]],
  [say.crop169, [16, 9]],
  [say.cropSquare, [1, 1]],
];
const RARER: readonly (readonly [string, [number, number]])[] = [
  [say.crop191, [191, 100]],
  [say.crop34, [3, 4]],
  [say.crop23, [2, 3]],
  [say.crop54, [5, 4]],
];
const PAGES: readonly (readonly [string, string])[] = [
  [say.cropA4, "a4"],
  [say.cropInches, "inches"],
  [say.cropDoubleInches, "double-inches"],
];

/** What the printer asks for, mm of the print. */
function InPrint({ crop }: { crop: Crop }): JSX.Element {
  const strips = [
    ["bleed", say.cropBleed],
    ["safe", say.cropSafe],
    ["gutter", say.cropGutter],
  ] as const;
  return (
    <>
      {strips.map(([strip, what]) => (
        <Stepper
          key={strip}
          name={what}
          value={say.cropPrintMm({ count: String(crop[strip] ?? 0) })}
          less={say.cropLess({ crop: crop.name, what })}
          more={say.cropMore({ crop: crop.name, what })}
          step={(way) => act.crop(crop, { [strip]: Math.max(0, (crop[strip] ?? 0) + way) })}
        />
      ))}
    </>
  );
}

/** A crop of any ratio, named by it. */
function OwnRatio(): JSX.Element {
  const add = ([wide, high]: Pair): void => {
    const sound = [wide, high].every((side) => Number.isInteger(side) && side >= 1 && side <= 10_000);
    if (!sound || wide > 20 * high || high > 20 * wide) {
      fault.value = say.cropOwnRange;
      return;
    }
    act.addCrop(`${wide}:${high}`, [wide, high]);
  };
  return (
    <TwoNumbers
      name={say.cropOwn}
      sides={[say.cropWide, say.cropHigh]}
      done={say.addIt}
      take={add}
    />
  );
}

/** A print of any trimmed size, named by it. */
function OwnPrint(): JSX.Element {
  const add = ([wide, high]: Pair): void => {
    const sound = [wide, high].every((side) => Number.isInteger(side) && side >= 10 && side <= 5000);
    if (!sound || wide > 20 * high || high > 20 * wide) {
      fault.value = say.cropPrintRange;
      return;
    }
    act.addPrint(say.cropPrintNamed({ wide: String(wide), high: String(high) }), [wide, high]);
  };
  return (
    <TwoNumbers
      name={say.cropOwnPrint}
      sides={[say.cropWideMm, say.cropHighMm]}
      done={say.addIt}
      take={add}
    />
  );
}

/** What the crop must show whole: told on a list, or by taps in the picture. */
function Shows({ crop }: { crop: Crop }): JSX.Element {
  const shown = crop.must_show ?? [];
  const dishes = (open.value?.items ?? []).filter(
    ({ id, on, role }) => shown.includes(id) || (on === undefined && (role === "hero" || role === "support")),
  );
  const tapping = marking.value && view.value === crop.id;
  const tap = (): void => {
    marking.value = !tapping;
    view.value = crop.id;
  };
  return (
    <div class="field" role="group" aria-label={say.cropShows}>
      <span>{say.cropShows}</span>
      <button class="word" aria-pressed={tapping} onClick={tap}>
        {say.cropTap}
      </button>
      <div class="steps">
        {dishes.map(({ id, name }) => (
          <button key={id} aria-pressed={shown.includes(id)} onClick={() => act.mustShow(crop.id, id)}>
            {name}
          </button>
        ))}
      </div>
    </div>
  );
}

function One({ layout, crop }: { layout: Layout; crop: Crop }): JSX.Element {
  const by = length(10);
  const move = (dx: number, dy: number): void =>
    void act.crop(crop, { at: [crop.at[0] + dx, crop.at[1] + dy] });
  return (
    <section class="panel" aria-label={crop.name}>
      <Field name={say.cropName} value={crop.name} take={(name) => act.crop(crop, { name })} />
      <Stepper
        name={say.cropAcross}
        value={length(crop.at[0])}
        less={say.cropLeft({ crop: crop.name, by })}
        more={say.cropRight({ crop: crop.name, by })}
        step={(way) => move(10 * way, 0)}
      />
      <Stepper
        name={say.cropDown}
        value={length(crop.at[1])}
        less={say.cropRaise({ crop: crop.name, by })}
        more={say.cropSink({ crop: crop.name, by })}
        step={(way) => move(0, 10 * way)}
      />
      <Stepper
        name={say.cropWidth}
        value={length(crop.width)}
        less={say.cropNarrower({ crop: crop.name, by: length(20) })}
        more={say.cropWider({ crop: crop.name, by: length(20) })}
        step={(way) => act.crop(crop, { width: Math.max(20, crop.width + 20 * way) })}
      />
      {crop.print === undefined || crop.print === null ? null : <InPrint crop={crop} />}
      <Pixels crop={crop} />
      <Actual layout={layout} crop={crop} />
      <Choice
        name={say.cropNeed}
        options={[
          ["must", say.cropMust],
          ["nice", say.cropNice],
        ]}
        value={crop.must ? "must" : "nice"}
        choose={(need) => act.crop(crop, { must: need === "must" })}
      />
      <Shows crop={crop} />
      {crop.copy === undefined || crop.copy === null ? (
        <button class="word" onClick={() => act.keepCopySpace(crop.id)}>
          {say.cropCopy}
        </button>
      ) : (
        <Field
          name={say.cropWording}
          value={crop.copy.wording}
          take={(wording) => crop.copy && act.crop(crop, { copy: { ...crop.copy, wording } })}
        />
      )}
      <button class="word" onClick={() => act.remove([crop.id])}>
        {say.cropAway({ crop: crop.name })}
      </button>
    </section>
  );
}

/** How many pixels it has, as the Crops reading says it. */
function Pixels({ crop }: { crop: Crop }): JSX.Element | null {
  const found = report.value?.findings.find(({ key }) => key === `crops:${crop.id}:size`);
  if (found === undefined) return null;
  return (
    <details class="pixels">
      <summary>{found.sentence}</summary>
      {found.working.map((line) => (
        <p key={line} class="quiet">
          {line}
        </p>
      ))}
    </details>
  );
}

/** The crop as wide as it will be seen. */
function Actual({ layout, crop }: { layout: Layout; crop: Crop }): JSX.Element {
  const shown = useSignal(false);
  const print = crop.print ?? undefined;
  return (
    <details onToggle={(event) => (shown.value = event.currentTarget.open)}>
      <summary>{say.cropActual}</summary>
      <p class="quiet">{print === undefined ? say.cropActualScreen : say.cropActualPrint}</p>
      <div class="actual" tabIndex={0} role="group" aria-label={say.cropActual}>
        <div style={print === undefined ? undefined : { width: `${print[0]}mm` }}>
          {shown.value ? <Kept layout={layout} crop={crop} /> : null}
        </div>
      </div>
    </details>
  );
}

/** Takes this crop into view; a second tap brings the whole frame back. */
function look(crop: Id): void {
  view.value = view.value === crop ? undefined : crop;
}

export function Keeps({ layout }: { layout: Layout }): JSX.Element | null {
  if (layout.crops.length === 0) return null;
  return (
    <section aria-label={say.cropsKeep}>
      <h3>{say.cropsKeep}</h3>
      <div class="keeps" tabIndex={0} role="group" aria-label={say.crops}>
        {layout.crops.map((crop) => (
          <button key={crop.id} aria-pressed={view.value === crop.id} onClick={() => look(crop.id)}>
            <Kept layout={layout} crop={crop} />
            <span>{crop.name}</span>
          </button>
        ))}
      </div>
    </section>
  );
}

export function CropsPanel({ layout }: { layout: Layout }): JSX.Element {
  return (
    <Panel title={say.crops}>
      <div class="steps" role="group" aria-label={say.cropAdd}>
        {USUAL.map(([name, ratio]) => (
          <button key={name} class="word" onClick={() => act.addCrop(name, ratio)}>
            {name}
          </button>
        ))}
        <button class="word" onClick={() => act.addPage(say.cropDoublePage, "double")}>
          {say.cropDoublePage}
        </button>
      </div>
      <details>
        <summary>{say.cropMoreShapes}</summary>
        <div class="steps" role="group" aria-label={say.cropMoreShapes}>
          {RARER.map(([name, ratio]) => (
            <button key={name} class="word" onClick={() => act.addCrop(name, ratio)}>
              {name}
            </button>
          ))}
          {PAGES.map(([name, page]) => (
            <button key={name} class="word" onClick={() => act.addPage(name, page)}>
              {name}
            </button>
          ))}
        </div>
      </details>
      <details>
        <summary>{say.cropOwn}</summary>
        <OwnRatio />
      </details>
      <details>
        <summary>{say.cropOwnPrint}</summary>
        <OwnPrint />
      </details>
      {layout.crops.length === 0 ? <p class="quiet">{say.cropNone}</p> : null}
      <Keeps layout={layout} />
      {layout.crops.map((crop) => (
        <details key={crop.id}>
          <summary>
            {say.cropSummary({ crop: crop.name, width: length(crop.width) })}
          </summary>
          <One layout={layout} crop={crop} />
        </details>
      ))}
    </Panel>
  );
}
