// The guide: what the planner does and in which order, each part with a drawing
// made by the core itself from the demonstration table.

import { signal } from "@preact/signals";
import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import type { JSX } from "preact";
import type { Planner } from "#core";
import * as say from "#words";

import type { Layout } from "../core";
import * as session from "../session";

/** Whether the guide is open. */
export const open = signal(false);

type Draw = (core: Planner, root: SVGSVGElement, layout: Layout) => unknown;

const whole: Draw = (core, root) => core.draw_crop(root, 0, false);
const PARTS: readonly (readonly [string, string, Draw | undefined])[] = [
  [say.guideLay, say.guideLayHow, whole],
  [say.guideRead, say.guideReadHow, undefined],
  [say.guideHands, say.guideHandsHow, (core, root, { exposures = [] }) => {
    const hands = exposures.filter(({ kind }) => kind === "hands")[1];
    return core.draw_exposure(root, hands?.id ?? 0);
  }],
  [say.guideCamera, say.guideCameraHow, (core, root) => core.draw_side(root)],
  [say.guideCrops, say.guideCropsHow, (core, root) => core.draw_crop(root, 0, true)],
  [say.guideClient, say.guideClientHow, (core, root, { crops }) => core.draw_crop(root, crops[1]?.id ?? 0, false)],
  [say.guidePapers, say.guidePapersHow, undefined],
  [say.guideDay, say.guideDayHow, (core, root, { exposures = [] }) =>
    core.draw_exposure(root, exposures[0]?.id ?? 0)],
  [say.guideTouch, say.guideTouchHow, undefined],
  [say.guideKept, say.guideKeptHow, undefined],
];

function Drawn({ core, layout, draw, name }: { core: Planner; layout: Layout; draw: Draw; name: string }): JSX.Element {
  const root = useRef<SVGSVGElement>(null);
  useLayoutEffect(() => {
    if (root.current !== null) draw(core, root.current, layout);
  }, []);
  return <svg ref={root} role="img" aria-label={name} />;
}

/** The demonstration table in a core of its own, so that the open one stays as it is. */
function Parts(): JSX.Element {
  const held = useRef<Planner | undefined>(undefined);
  if (held.current === undefined) {
    held.current = session.another();
    held.current.open_starter();
  }
  const core = held.current;
  useEffect(() => () => core.free(), []);
  const layout = core.layout() as Layout;
  return (
    <ol>
      {PARTS.map(([title, how, draw]) => (
        <li key={title}>
          <h3>{title}</h3>
          {draw === undefined ? null : <Drawn core={core} layout={layout} draw={draw} name={title} />}
          <p>{how}</p>
        </li>
      ))}
    </ol>
  );
}

export function Guide(): JSX.Element | null {
  const dialog = useRef<HTMLDialogElement>(null);
  const shown = open.value;
  useEffect(() => {
    if (shown) dialog.current?.showModal();
  }, [shown]);
  if (!shown) return null;
  return (
    <dialog class="guide sheet" ref={dialog} aria-label={say.guide} onClose={() => (open.value = false)}>
      <header>
        <h2>{say.guide}</h2>
        <button onClick={() => dialog.current?.close()}>{say.guideClose}</button>
      </header>
      <p>{say.guideWhat}</p>
      <Parts />
      <p class="caution">{say.guideCaution}</p>
    </dialog>
  );
}
