// Place settings: what lies at a place and how many, laid round the table in one act.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import * as say from "#words";

import { Choice, Stepper } from "../parts/controls";
import * as session from "../session";

const KINDS = [
  ["camera", say.settingsCamera],
  ["true", say.settingsTrue],
  ["tea", say.settingsTea],
  ["chopsticks-across", say.settingsAcross],
  ["chopsticks-beside", say.settingsBeside],
] as const;

export function Settings(): JSX.Element {
  const setting = useSignal<(typeof KINDS)[number][0]>("camera");
  const places = useSignal(6);
  const close = useSignal(false);
  const lay = (): void => {
    const wish = { setting: setting.value, places: places.value, close: close.value };
    session.act(() => session.core().lay_places(wish));
  };
  return (
    <details>
      <summary>{say.settings}</summary>
      <section class="panel" aria-label={say.settings}>
        <Choice
          name={say.settingsKind}
          options={KINDS}
          value={setting.value}
          choose={(kind) => (setting.value = kind)}
        />
        <Stepper
          name={say.settingsCount}
          value={String(places.value)}
          less={say.peopleFewer}
          more={say.peopleMore}
          step={(by) => (places.value = Math.max(1, Math.min(12, places.value + by)))}
        />
        <div class="steps">
          <button
            class="word"
            aria-pressed={close.value}
            onClick={() => (close.value = !close.value)}
          >
            {say.settingsClose}
          </button>
          <button class="word" onClick={lay}>
            {say.settingsLay({ count: places.value })}
          </button>
        </div>
      </section>
    </details>
  );
}
