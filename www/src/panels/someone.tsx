// Someone whose hands are in the picture: how they are built, what they wear,
// and whether they agreed.

import type { JSX } from "preact";
import * as say from "#words";

import { act } from "../acts";
import type { Person } from "../core";
import { Choice, Stepper, Tones } from "../parts/controls";
import * as session from "../session";
import * as state from "../state";
import { length } from "../units";

const SKINS = [
  say.skinVeryLight,
  say.skinLight,
  say.skinIntermediate,
  say.skinTan,
  say.skinBrown,
  say.skinDark,
];
const SLEEVES = [
  ["#191614", say.sleeveBlack],
  ["#4b4f57", say.sleeveCharcoal],
  ["#909aa0", say.sleeveGrey],
  ["#e9e2d2", say.sleeveCream],
  ["#5f778a", say.sleeveBlue],
  ["#7a4b36", say.sleeveRust],
] as const;
const NAILS = [
  ["", say.nailsBare],
  ["#a3202b", say.nailsRed],
  ["#5a1a2c", say.nailsDark],
  ["#e6b9ae", say.nailsPale],
] as const;
const STATURES = [
  say.statureWomanShort,
  say.statureWomanMiddle,
  say.statureWomanTall,
  say.statureManShort,
  say.statureManMiddle,
  say.statureManTall,
];

/** How tall, by the survey or by the centimetre, and how that compares. */
function Stature({ person }: { person: Person }): JSX.Element {
  const core = session.core();
  const tall = person.stature ?? undefined;
  const by = length(10);
  const [women = 0, men = 0] = core.shorter(tall ?? core.usual_stature());
  const known = [...core.statures()];
  return (
    <>
      <label class="line">
        <span class="name">{say.stature}</span>
        <select
          value={String(tall === undefined ? 0 : known.includes(tall) ? tall : -1)}
          onChange={(event) => {
            const stature = Number(event.currentTarget.value);
            act.person(person, { stature: stature > 0 ? stature : null });
          }}
        >
          <option value="0">{say.statureUsual}</option>
          {tall === undefined || known.includes(tall) ? null : <option value="-1">{length(tall)}</option>}
          {known.map((mm, n) => (
            <option key={mm} value={String(mm)}>
              {STATURES[n]?.({ tall: length(mm) })}
            </option>
          ))}
        </select>
      </label>
      <Stepper
        name={say.statureTold}
        value={length(tall ?? core.usual_stature())}
        less={say.statureLess({ by })}
        more={say.statureMore({ by })}
        step={(way) => act.person(person, { stature: (tall ?? core.usual_stature()) + 10 * way })}
      />
      <p class="quiet">{say.staturePercentile({ women: String(women), men: String(men) })}</p>
    </>
  );
}

export function Someone({ person }: { person: Person }): JSX.Element {
  const skins = [...session.core().skins()];
  const place = state.layout.value?.people?.findIndex(({ id }) => id === person.id) ?? 0;
  return (
    <details class="someone">
      <summary>{say.someone({ letter: String.fromCharCode(65 + place) })}</summary>
      <Stature person={person} />
      <Choice
        name={say.handed}
        options={[
          ["left", say.ringLeft],
          ["right", say.ringRight],
        ]}
        value={person.handed ?? "right"}
        choose={(handed) => act.person(person, { handed })}
      />
      <Choice
        name={say.sleeve}
        options={[
          ["bare", say.sleeveBare],
          ["rolled", say.sleeveRolled],
          ["long", say.sleeveLong],
        ]}
        value={person.sleeve.length}
        choose={(sleeve) => act.person(person, { sleeve: { ...person.sleeve, length: sleeve } })}
      />
      <Tones
        name={say.sleeveColour}
        tones={SLEEVES}
        value={person.sleeve.colour}
        choose={(colour) => act.person(person, { sleeve: { ...person.sleeve, colour } })}
      />
      <Tones
        name={say.skin}
        tones={skins.map((tone, n) => [tone, SKINS[n] ?? ""] as const)}
        value={person.skin}
        choose={(skin) => act.person(person, { skin })}
      />
      <Choice
        name={say.nails}
        options={NAILS}
        value={NAILS.find(([tone]) => tone === (person.nails ?? ""))?.[0]}
        choose={(nails) => act.person(person, { nails: nails === "" ? null : nails })}
      />
      <Choice
        name={say.ring}
        options={[
          ["none", say.ringNone],
          ["left", say.ringLeft],
          ["right", say.ringRight],
        ]}
        value={person.ring ?? "none"}
        choose={(ring) => act.person(person, { ring: ring === "none" ? null : ring })}
      />
      <label class="check">
        <input
          type="checkbox"
          checked={person.released ?? false}
          onChange={(event) => act.person(person, { released: event.currentTarget.checked })}
        />
        <span>{say.released}</span>
      </label>
    </details>
  );
}
