// Something strewn along a path: taken up here, brushed over the picture.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import * as say from "#words";

import { Stepper } from "../parts/controls";
import * as several from "../several";
import * as session from "../session";
import * as state from "../state";
import type { Found } from "./arrange";

export function Strew(): JSX.Element {
  const found = session.core().strewn() as Found[];
  const prop = useSignal(found[0]?.prop ?? "");
  const amount = useSignal(4);
  const taken = state.brush.value !== undefined;
  const take = (up: boolean): void => {
    if (up) several.leave();
    state.brush.value = up ? { prop: prop.value, amount: amount.value } : undefined;
  };
  return (
    <details onToggle={(event) => event.currentTarget.open || take(false)}>
      <summary>{say.strew}</summary>
      <section class="panel" aria-label={say.strew}>
        <label class="field">
          <span>{say.strewWhat}</span>
          <select
            value={prop.value}
            onChange={(event) => {
              prop.value = event.currentTarget.value;
              take(taken);
            }}
          >
            {found.map((each) => (
              <option key={each.prop} value={each.prop}>
                {each.name}
              </option>
            ))}
          </select>
        </label>
        <Stepper
          name={say.strewAmount}
          value={String(amount.value)}
          less={say.strewLess}
          more={say.strewMore}
          step={(by) => {
            amount.value = Math.max(1, Math.min(10, amount.value + by));
            take(taken);
          }}
        />
        <button class="word" aria-pressed={taken} onClick={() => take(!taken)}>
          {say.strewBrush}
        </button>
        {taken ? <p class="quiet">{say.strewHow}</p> : null}
      </section>
    </details>
  );
}
