// What holds the camera, where the photographer stands, and both from the side.

import { useLayoutEffect, useRef } from "preact/hooks";
import type { JSX } from "preact";
import * as say from "#words";

import { put } from "../about";
import { act } from "../acts";
import type { Layout, Pair, Rig } from "../core";
import { Choice, Stepper, Tape } from "../parts/controls";
import * as session from "../session";
import { putting, report, through, type Putting } from "../state";
import { length, mass } from "../units";

const STEP_MM = 50;
const STEP_G = 500;

/** Camera, stand and light from the side, to scale. */
function Side({ layout }: { layout: Layout }): JSX.Element {
  const root = useRef<SVGSVGElement>(null);
  useLayoutEffect(() => {
    if (root.current !== null) session.core().draw_side(root.current);
  }, [layout]);
  return <svg ref={root} class="side" role="img" aria-label={say.sideSketch} />;
}

/** A place on the floor, stepped across and down. */
function Place(props: {
  at: Pair;
  across: readonly [string, string, string];
  down: readonly [string, string, string];
  take: (at: Pair) => void;
}): JSX.Element {
  const [x, y] = props.at;
  const [across, left, right] = props.across;
  const [down, up, lower] = props.down;
  return (
    <>
      <Stepper
        name={across}
        value={length(x)}
        less={left}
        more={right}
        step={(way) => props.take([x + STEP_MM * way, y])}
      />
      <Stepper
        name={down}
        value={length(y)}
        less={up}
        more={lower}
        step={(way) => props.take([x, y + STEP_MM * way])}
      />
    </>
  );
}

/** A mass in steps of half a kilogram; at nothing it may be gone. */
function Mass(props: { name: string; grams: number; take: (grams: number) => void }): JSX.Element {
  const { name: what, grams } = props;
  const by = mass(STEP_G);
  return (
    <Stepper
      name={what}
      value={grams === 0 ? say.rigNone : mass(grams)}
      less={say.rigLighter({ what, by })}
      more={say.rigHeavier({ what, by })}
      step={(way) => props.take(Math.min(100_000, Math.max(0, grams + STEP_G * way)))}
    />
  );
}

/** The stand's own figures. */
function Stand({ rig }: { rig: Rig }): JSX.Element {
  const by = length(STEP_MM);
  const lead = rig.leg_bearing;
  const { counterweight, bag } = rig;
  const stepped = (key: "foot_radius" | "mast_height" | "arm_length", least: number) => (way: -1 | 1) =>
    act.rig({ ...rig, [key]: Math.max(least, rig[key] + STEP_MM * way) });
  const gone = (key: "counterweight" | "bag" | "leg_bearing" | "at"): Rig => {
    const { [key]: _, ...rest } = rig;
    return rest as Rig;
  };
  return (
    <>
      <Place
        at={rig.at ?? [0, 0]}
        across={[say.rigAcross, say.rigLeft({ by }), say.rigRight({ by })]}
        down={[say.rigDown, say.rigUp({ by }), say.rigLower({ by })]}
        take={(at) => act.rig({ ...rig, at })}
      />
      <Stepper
        name={say.rigLead}
        value={lead === undefined ? say.rigLeadLoad : say.degrees({ turn: String(lead) })}
        less={say.rigLeadBack}
        more={say.rigLeadOn}
        step={(way) => act.rig({ ...rig, leg_bearing: ((lead ?? 0) + 15 * way + 360) % 360 })}
      />
      {lead === undefined ? null : (
        <button class="word" onClick={() => act.rig(gone("leg_bearing"))}>
          {say.rigLeadTurn}
        </button>
      )}
      <Stepper
        name={say.rigFeet}
        value={length(rig.foot_radius)}
        less={say.rigFeetLess({ by })}
        more={say.rigFeetMore({ by })}
        step={stepped("foot_radius", 50)}
      />
      <Stepper
        name={say.rigMast}
        value={length(rig.mast_height)}
        less={say.rigMastLess({ by })}
        more={say.rigMastMore({ by })}
        step={stepped("mast_height", 100)}
      />
      <Stepper
        name={say.rigArm}
        value={length(rig.arm_length)}
        less={say.rigArmLess({ by })}
        more={say.rigArmMore({ by })}
        step={stepped("arm_length", 0)}
      />
      <Mass
        name={say.rigStandMass}
        grams={rig.stand_mass}
        take={(stand_mass) => act.rig({ ...rig, stand_mass })}
      />
      <Mass name={say.rigArmMass} grams={rig.arm_mass} take={(arm_mass) => act.rig({ ...rig, arm_mass })} />
      <Mass
        name={say.rigLoadMass}
        grams={rig.load_mass}
        take={(load_mass) => act.rig({ ...rig, load_mass })}
      />
      {rig.kind === "two-stands" ? null : (
        <Mass
          name={say.rigCounterweight}
          grams={counterweight?.mass ?? 0}
          take={(grams) =>
            act.rig(
              grams === 0
                ? gone("counterweight")
                : { ...rig, counterweight: { behind: counterweight?.behind ?? 300, mass: grams } },
            )
          }
        />
      )}
      {counterweight === undefined || rig.kind === "two-stands" ? null : (
        <Stepper
          name={say.rigBehind}
          value={length(counterweight.behind)}
          less={say.rigBehindLess({ by })}
          more={say.rigBehindMore({ by })}
          step={(way) => {
            const behind = Math.max(0, counterweight.behind + STEP_MM * way);
            act.rig({ ...rig, counterweight: { ...counterweight, behind } });
          }}
        />
      )}
      <Mass
        name={say.rigBag}
        grams={bag?.mass ?? 0}
        take={(grams) =>
          act.rig(grams === 0 ? gone("bag") : { ...rig, bag: { hung: bag?.hung ?? "hub", mass: grams } })
        }
      />
      {bag === undefined ? null : (
        <Choice
          name={say.rigBagHung}
          options={[
            ["hub", say.rigBagHub],
            ["lead-leg", say.rigBagLead],
            ["rear-legs", say.rigBagRear],
          ]}
          value={bag.hung}
          choose={(hung) => act.rig({ ...rig, bag: { ...bag, hung } })}
        />
      )}
      <button class="word" onClick={() => act.rig(gone("at"))}>
        {say.rigRemove}
      </button>
    </>
  );
}

/** What the Rig reading says, or why it cannot. */
function Said(): JSX.Element {
  const findings = report.value?.findings.filter(({ reading, taste }) => reading === "rig" && !taste) ?? [];
  const waits = report.value?.waiting.find(({ reading }) => reading === "rig")?.reason ?? "";
  return findings.length === 0 ? (
    <p>{waits}</p>
  ) : (
    <>
      {findings.map(({ key, sentence, remedy }) => (
        <div key={key}>
          <p>{sentence}</p>
          {remedy ? (
            <Tape act={remedy.act} predicted={remedy.predicted} onClick={() => session.remedy(key)} />
          ) : null}
        </div>
      ))}
    </>
  );
}

/** Puts the stand, or oneself, where the picture is tapped next. */
function Tapped({ what }: { what: Putting }): JSX.Element | null {
  const on = putting.value === what;
  // Through the lens nothing beside the table is seen.
  if (through.value) return null;
  return (
    <>
      <button
        class="word"
        aria-pressed={on}
        onClick={() => {
          if (on) putting.value = undefined;
          else put(what);
        }}
      >
        {what === "stand" ? say.rigTap : say.photographerTap}
      </button>
      {on ? <p role="status">{say.tapWhere}</p> : null}
    </>
  );
}

export function RigPanel({ layout }: { layout: Layout }): JSX.Element {
  const { rig } = layout;
  const by = length(STEP_MM);
  return (
    <>
      <Side layout={layout} />
      <Said />
      {rig.kind === "ceiling" ? null : <Tapped what="stand" />}
      <Tapped what="photographer" />
      <Choice
        name={say.rigKind}
        options={[
          ["arm", say.rigKindArm],
          ["two-stands", say.rigKindTwo],
          ["tripod", say.rigKindTripod],
          ["ceiling", say.rigKindCeiling],
        ]}
        value={rig.kind}
        choose={(kind) => act.rig({ ...rig, kind })}
      />
      {rig.kind === "ceiling" ? null : rig.at === undefined ? (
        <button class="word" onClick={() => act.placeStand()}>
          {say.rigPlace}
        </button>
      ) : (
        <Stand rig={rig} />
      )}
      {rig.photographer === undefined ? (
        <button class="word" onClick={() => act.placePhotographer()}>
          {say.photographerPlace}
        </button>
      ) : (
        <Place
          at={rig.photographer}
          across={[say.photographerAcross, say.photographerLeft({ by }), say.photographerRight({ by })]}
          down={[say.photographerDown, say.photographerUp({ by }), say.photographerLower({ by })]}
          take={(photographer) => act.rig({ ...rig, photographer })}
        />
      )}
    </>
  );
}
