// The client's view of a link: the picture, its crops, the list, one reply.

import { useEffect, useRef } from "preact/hooks";
import type { JSX } from "preact";
import * as say from "#words";

import type { Hand, Id, Layout } from "../core";
import { freshId } from "../fresh";
import { Choice } from "../parts/controls";
import { Kept, Whole } from "../parts/kept";
import { Notices } from "../parts/notices";
import * as beside from "../beside";
import * as offered from "../offered";
import * as reply from "../reply";
import * as session from "../session";
import * as state from "../state";
import { Reply } from "./reply";

const DOES: Record<string, (said: { count: number; thing: string }) => string> = {
  tear: say.clientTear,
  squeeze: say.clientSqueeze,
  pour: say.clientPour,
  sprinkle: say.clientSprinkle,
  spoon: say.clientSpoon,
  hold: say.clientHold,
  reach: say.clientReach,
  rest: say.clientRest,
  cut: say.clientCut,
  pass: say.clientPass,
  place: say.clientPlace,
  lift: say.clientLift,
};

/** Made once: that takes longer than all it is used for. */
let days: Intl.DateTimeFormat | undefined;

/** A day as the page's own words speak, "14 March". */
export function day(date: string | number): string {
  days ??= new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "long" });
  return days.format(new Date(typeof date === "string" ? `${date}T12:00` : date));
}

/** Which version it is, and of which day. */
export function version(layout: Layout): string {
  const { number, date } = layout.revision;
  const parts = number > 0 ? [say.clientVersion({ number: String(number) })] : [];
  if (date !== "") parts.push(day(date));
  return parts.join(" · ");
}

/** What a hand works at: the dish under its fingertips, else the nearest. */
function workedAt(layout: Layout, hand: Hand): string {
  const core = session.core();
  const under = [...core.hit(...hand.target)].map((id) => core.root(id));
  const found = layout.items.find((item) => under.includes(item.id));
  if (found !== undefined) return found.name;
  const far = (at: readonly [number, number]): number =>
    Math.hypot(at[0] - hand.target[0], at[1] - hand.target[1]);
  const near = [...layout.items].sort((a, b) => far(a.at) - far(b.at))[0];
  return near?.name ?? say.thing;
}

/** What these hands of one action do. */
export function doing(layout: Layout, [hand, ...others]: Hand[]): string {
  if (hand === undefined) return "";
  const thing = workedAt(layout, hand);
  return (DOES[hand.action] ?? say.clientReach)({ count: 1 + others.length, thing });
}

interface Line {
  id: Id;
  number: string;
  text: string;
}

/** What wears a tag in the picture: hero, main dishes, then hands by flag. */
export function tagged(layout: Layout): Line[] {
  const things = state.things.value;
  const number = (id: number): string => things.find((thing) => thing.id === id)?.number ?? "";
  const main = ["hero", "support"];
  const dishes = layout.items
    .filter((item) => main.includes(item.role) && number(item.id) !== "")
    .map((item) => ({
      id: item.id,
      number: number(item.id),
      text: item.role === "hero" ? say.clientHero({ thing: item.name }) : item.name,
    }));
  const flags = new Map<string, Hand[]>();
  for (const hand of layout.hands ?? []) {
    const flag = number(hand.id);
    flags.set(flag, [...(flags.get(flag) ?? []), hand]);
  }
  const hands = [...flags].map(([flag, own]) => {
    return { id: own[0]?.id ?? 0, number: flag, text: doing(layout, own) };
  });
  return [...dishes.sort((a, b) => Number(a.number) - Number(b.number)), ...hands];
}

/** What else stands there, each name once. */
export function others(layout: Layout): string {
  const count = new Map<string, number>();
  for (const item of layout.items) {
    if (item.on !== undefined || item.role === "hero" || item.role === "support") continue;
    count.set(item.name, (count.get(item.name) ?? 0) + 1);
  }
  return [...count]
    .map(([thing, times]) => (times === 1 ? thing : say.clientTimes({ thing, number: String(times) })))
    .join(", ");
}

/** Begins a remark where the picture was tapped. */
function remarkAt(event: MouseEvent): void {
  const svg = (event.currentTarget as Element).querySelector("svg");
  const into = svg?.getScreenCTM()?.inverse();
  if (into === undefined || event.clientX === 0) return;
  const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(into);
  reply.tapped(x, y);
}

/** The picture and its crops side by side, as high as the one that is looked at. */
function Flick({ layout }: { layout: Layout }): JSX.Element {
  const row = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const box = row.current;
    if (box === null) return undefined;
    for (const figure of box.children as HTMLCollectionOf<HTMLElement>) {
      const shown = figure.querySelector("svg")?.viewBox.baseVal;
      // As wide as the screen lets it be, and no higher than leaves room for words.
      if (shown) figure.style.width = `min(100% - 14px, ${(54 * shown.width) / shown.height}vh)`;
    }
    const watch = new IntersectionObserver(
      (seen) => {
        for (const each of seen) {
          const figure = each.target as HTMLElement;
          if (each.isIntersecting) box.style.height = `${figure.offsetHeight + 8}px`;
        }
      },
      { root: box, threshold: 0.7 },
    );
    for (const figure of box.children) watch.observe(figure);
    return () => watch.disconnect();
  }, [layout]);
  return (
    <div class="flick" ref={row} tabIndex={0} role="group" aria-label={say.clientFlick}>
      <figure>
        <div class="remarked" onClick={remarkAt}>
          <Whole layout={layout} />
        </div>
        <figcaption>{say.clientWhole}</figcaption>
      </figure>
      {layout.crops.map((crop) => (
        <figure key={crop.id}>
          <Kept layout={layout} crop={crop} />
          <figcaption>{crop.name}</figcaption>
        </figure>
      ))}
    </div>
  );
}

/** The two versions of a link, to flick through by name. */
function Two({ names }: offered.Offered): JSX.Element {
  const options = names.map((name, place) => [String(place), name] as const);
  return (
    <div class="versions-two">
      <Choice
        name={say.clientTwo}
        options={options}
        value={String(offered.shown.value)}
        choose={(place) => offered.look(place === "0" ? 0 : 1)}
      />
    </div>
  );
}

/** What a client is told of what changed from the first to the second. */
function Changed({ names: [first, second] }: offered.Offered): JSX.Element | null {
  const told = beside.told.value;
  if (told === undefined || !told.versions) return null;
  const changes = told.changes.filter(({ client }) => client);
  return (
    <section aria-label={say.twoChanges}>
      <h2>{say.clientChanged({ first, second })}</h2>
      {changes.length === 0 ? (
        <p class="quiet">{say.twoNone}</p>
      ) : (
        <ul class="changed">
          {changes.map(({ sentence }, place) => (
            <li key={place}>{sentence}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

export function Client({ layout }: { layout: Layout }): JSX.Element {
  const keepCopy = async (): Promise<void> => {
    reply.leave();
    await session.keepCopy(freshId());
    offered.forget();
    history.replaceState(null, "", location.pathname);
    state.stage.value = "work";
  };
  const also = others(layout);
  const two = offered.two.value;
  return (
    <main class="client sheet">
      <Notices />
      <header class="head">
        <h1>{layout.title || say.untitledTable}</h1>
        <p class="quiet">{version(layout)}</p>
      </header>
      <Flick layout={layout} />
      <section class="say">
        {two === undefined ? null : <Two {...two} />}
        <p class="quiet">{say.remarkHow}</p>
        <ol class="list" aria-label={say.clientList}>
          {tagged(layout).map(({ id, number, text }) => (
            <li key={number}>
              <button onClick={() => reply.begun({ thing: id })}>
                <span class="away">{say.remarkOn} </span>
                <b>{number}</b>
                <span>{text}</span>
              </button>
            </li>
          ))}
        </ol>
        {also === "" ? null : <p class="quiet also">{say.clientAlso({ things: also })}</p>}
        {two === undefined ? null : <Changed {...two} />}
        <p class="caution">{say.cautionClient}</p>
        <div class="last panel">
          <Reply layout={layout} />
          {state.fromNewer.value ? null : (
            <button class="word quiet" onClick={() => void keepCopy()}>
              {say.openCopy}
            </button>
          )}
        </div>
      </section>
    </main>
  );
}
