// Crops: what each placement keeps of the picture.

import { useEffect, useRef } from "preact/hooks";
import type { JSX } from "preact";

import { act } from "../acts";
import type { Crop, Layout } from "../core";
import { Field, Panel, Stepper } from "../parts/controls";
import { core } from "../session";
import { length } from "../state";

/** What one crop keeps; without one, the whole frame. */
export function Kept(props: { layout: Layout; crop: number; name: string }): JSX.Element {
  const root = useRef<SVGSVGElement>(null);
  useEffect(() => {
    if (root.current !== null) core().draw_crop(root.current, props.crop);
  }, [props.layout, props.crop]);
  return <svg ref={root} role="img" aria-label={`What “${props.name}” keeps`} />;
}

const USUAL: readonly (readonly [string, [number, number]])[] = [
  ["4:5 post", [4, 5]],
  ["9:16 upright", [9, 16]],
  ["16:9 banner", [16, 9]],
  ["square", [1, 1]],
];

function One({ crop }: { crop: Crop }): JSX.Element {
  const move = (dx: number, dy: number): void =>
    void act.crop(crop, { at: [crop.at[0] + dx, crop.at[1] + dy] });
  return (
    <section class="panel" aria-label={crop.name}>
      <Field name="Name of the crop" value={crop.name} take={(name) => act.crop(crop, { name })} />
      <Stepper
        name="Left and right"
        value={length(crop.at[0])}
        less={`${crop.name}: 1 cm left`}
        more={`${crop.name}: 1 cm right`}
        step={(by) => move(10 * by, 0)}
      />
      <Stepper
        name="Up and down"
        value={length(crop.at[1])}
        less={`${crop.name}: 1 cm up`}
        more={`${crop.name}: 1 cm down`}
        step={(by) => move(0, 10 * by)}
      />
      <Stepper
        name="Width on the table"
        value={length(crop.width)}
        less={`${crop.name}: 2 cm narrower`}
        more={`${crop.name}: 2 cm wider`}
        step={(by) => act.crop(crop, { width: Math.max(20, crop.width + 20 * by) })}
      />
      {crop.copy === undefined || crop.copy === null ? (
        <button class="word" onClick={() => act.copySpace(crop)}>
          Keep copy space in it
        </button>
      ) : (
        <Field
          name="Words for the copy space"
          value={crop.copy.wording}
          take={(wording) => crop.copy && act.crop(crop, { copy: { ...crop.copy, wording } })}
        />
      )}
      <button class="word" onClick={() => act.remove([crop.id])}>
        Take “{crop.name}” away
      </button>
    </section>
  );
}

export function Keeps({ layout }: { layout: Layout }): JSX.Element | null {
  if (layout.crops.length === 0) return null;
  return (
    <section aria-label="What each crop keeps">
      <h3>what each crop keeps</h3>
      <div class="keeps" tabIndex={0} role="group" aria-label="Crops">
        {layout.crops.map((crop) => (
          <figure key={crop.id}>
            <Kept layout={layout} crop={crop.id} name={crop.name} />
            <figcaption>{crop.name}</figcaption>
          </figure>
        ))}
      </div>
    </section>
  );
}

export function CropsPanel({ layout }: { layout: Layout }): JSX.Element {
  return (
    <Panel title="Crops">
      <div class="steps" role="group" aria-label="Add a crop">
        {USUAL.map(([name, ratio]) => (
          <button key={name} class="word" onClick={() => act.addCrop(layout, name, ratio)}>
            {name}
          </button>
        ))}
        <button class="word" onClick={() => act.addDoublePage(layout)}>
          double page
        </button>
      </div>
      <Keeps layout={layout} />
      {layout.crops.map((crop) => (
        <details key={crop.id}>
          <summary>
            {crop.name}, {length(crop.width)} wide
          </summary>
          <One crop={crop} />
        </details>
      ))}
    </Panel>
  );
}
