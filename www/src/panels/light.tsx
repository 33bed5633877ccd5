// The one light, what of it is shown on the picture, and the cards about it.

import { useEffect, useRef } from "preact/hooks";
import type { JSX } from "preact";
import * as say from "#words";

import { act } from "../acts";
import type { Card, Layout } from "../core";
import { Choice, Stepper } from "../parts/controls";
import * as session from "../session";
import { chosen, through } from "../state";
import { length } from "../units";
import { Show } from "./show";

export function LightControls({ layout }: { layout: Layout }): JSX.Element {
  const { light } = layout;
  const by = length(100);
  return (
    <>
      {through.value ? null : <p>{say.lightTap}</p>}
      <Stepper
        name={say.lightAt}
        value={session.core().clock(light.clock)}
        less={say.lightBack}
        more={say.lightOn}
        step={(way) => act.light({ ...light, clock: (light.clock + 15 * way + 360) % 360 })}
      />
      <Stepper
        name={say.lightAway}
        value={length(light.distance)}
        less={say.lightNearer({ by })}
        more={say.lightFarther({ by })}
        step={(way) => act.light({ ...light, distance: Math.max(0, light.distance + 100 * way) })}
      />
      <Stepper
        name={say.lightAbove}
        value={length(light.height_above_table)}
        less={say.lightLower({ by })}
        more={say.lightHigher({ by })}
        step={(way) =>
          act.light({
            ...light,
            height_above_table: Math.max(50, light.height_above_table + 100 * way),
          })
        }
      />
      <Choice
        name={say.lightShape}
        options={[
          ["window", say.lightWindow],
          ["disc", say.lightDisc],
        ]}
        value={light.shape}
        choose={(shape) => act.light({ ...light, shape })}
      />
      <Stepper
        name={say.width}
        value={length(light.width)}
        less={say.lightNarrower({ by })}
        more={say.lightWider({ by })}
        step={(way) => act.light({ ...light, width: Math.max(10, light.width + 100 * way) })}
      />
      {light.shape === "window" ? <Window layout={layout} /> : null}
      <Show />
      <Cards layout={layout} />
    </>
  );
}

/** A window's height, and where its sill comes to lie. */
function Window({ layout: { light } }: { layout: Layout }): JSX.Element {
  const by = length(100);
  const sill = light.height_above_table - light.height / 2;
  const height = length(Math.abs(sill));
  return (
    <>
      <Stepper
        name={say.height}
        value={length(light.height)}
        less={say.lightShallower({ by })}
        more={say.lightTaller({ by })}
        step={(way) => act.light({ ...light, height: Math.max(10, light.height + 100 * way) })}
      />
      <p>{sill < 0 ? say.lightSillBelow({ height }) : say.lightSill({ height })}</p>
    </>
  );
}

function Cards({ layout }: { layout: Layout }): JSX.Element {
  return (
    <>
      <h3>{say.cards}</h3>
      {(layout.cards ?? []).length > 0 ? <p>{say.cardsHint}</p> : null}
      {(layout.cards ?? []).map((card) => (
        <OneCard key={card.id} card={card} />
      ))}
      <div class="line">
        <button class="word" onClick={() => act.addCard(true)}>
          {say.cardAddWhite}
        </button>
        <button class="word" onClick={() => act.addCard(false)}>
          {say.cardAddBlack}
        </button>
      </div>
    </>
  );
}

function OneCard({ card }: { card: Card }): JSX.Element {
  const by = length(50);
  const [x, y] = card.at;
  const own = useRef<HTMLFieldSetElement>(null);
  const here = chosen.value === card.id;
  useEffect(() => {
    if (here) own.current?.scrollIntoView({ block: "nearest" });
  }, [here]);
  return (
    <fieldset ref={own} aria-current={here}>
      <legend>
        <button class="word" aria-pressed={here} onClick={() => session.choose(here ? undefined : card.id)}>
          {card.kind === "white" ? say.cardWhite : say.cardBlack}
        </button>
      </legend>
      <Stepper
        name={say.cardAcross}
        value={length(x)}
        less={say.cardNearer({ by })}
        more={say.cardFarther({ by })}
        step={(way) => act.card(card, { at: [x + 50 * way, y] })}
      />
      <Stepper
        name={say.cardDeep}
        value={length(y)}
        less={say.cardUp({ by })}
        more={say.cardDown({ by })}
        step={(way) => act.card(card, { at: [x, y + 50 * way] })}
      />
      <Stepper
        name={say.cardFaces}
        value={session.core().clock(card.turn)}
        less={say.turnBack}
        more={say.turnOn}
        step={(way) => act.card(card, { turn: (card.turn + 5 * way + 360) % 360 })}
      />
      <button class="word" onClick={() => act.removeCard(card)}>
        {say.takeAway}
      </button>
    </fieldset>
  );
}
