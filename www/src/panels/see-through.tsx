// The plan as a transparent picture of the camera's own pixels.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import * as say from "#words";

import { painted } from "../after";
import { share } from "../export";
import { NoRoom, rasterised } from "../raster";
import * as session from "../session";
import * as state from "../state";
import { Exposures } from "./hands";

interface Plan {
  svg: string;
  pixels: [number, number];
  told: boolean;
}

const sizes = ([wide, high]: readonly [number, number]): { wide: string; high: string } => ({
  wide: String(wide),
  high: String(high),
});

/** Saves the plan under this name. */
export function SeeThrough({ title, name }: { title: string; name: string }): JSX.Element {
  const told = useSignal("");
  const busy = useSignal(false);
  const half = useSignal<[number, number] | undefined>(undefined);
  const save = async (size?: [number, number]): Promise<void> => {
    const plan = session.core().plan_over(state.exposure.value) as Plan | undefined;
    half.value = undefined;
    if (plan === undefined) {
      told.value = say.seeThroughNone;
      return;
    }
    [busy.value, told.value] = [true, say.seeThroughMaking];
    // What was just said is seen before the page is busy.
    await new Promise<void>(painted);
    const pixels = size ?? plan.pixels;
    const whose = plan.told ? say.seeThroughReady : say.seeThroughUsual;
    const ready = size === undefined ? whose : say.seeThroughHalfReady;
    try {
      const blob = await rasterised(plan.svg, pixels);
      await share(new File([blob], `${name}-see-through.png`, { type: blob.type }), title);
      told.value = ready(sizes(pixels));
    } catch (error) {
      told.value = "";
      if (error instanceof NoRoom) {
        told.value = say.seeThroughNoRoom(sizes(pixels));
        if (size === undefined) half.value = [Math.round(pixels[0] / 2), Math.round(pixels[1] / 2)];
      } else {
        state.fault.value = say.pictureNotMade({ why: session.message(error) });
      }
    }
    busy.value = false;
  };
  const smaller = half.value;
  return (
    <section class="panel" aria-label={say.seeThrough}>
      <h3>{say.seeThrough}</h3>
      <p class="quiet">{say.seeThroughWhat}</p>
      <Exposures />
      <button class="tape" disabled={busy.value} onClick={() => void save()}>
        {say.seeThroughSave}
      </button>
      <p role="status">{told.value}</p>
      {smaller === undefined ? null : (
        <button class="word" onClick={() => void save(smaller)}>
          {say.seeThroughHalf(sizes(smaller))}
        </button>
      )}
    </section>
  );
}
