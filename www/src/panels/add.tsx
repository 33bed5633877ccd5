// Adding: search by trade name or size, look through the groups, take one's own.

import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { ComponentChildren, JSX } from "preact";
import * as say from "#words";

import * as mine from "../mine";
import { Search } from "../parts/controls";
import { Small } from "../parts/small";
import * as picks from "../picks";
import * as put from "../put";
import * as session from "../session";
import type { Kept } from "../store";
import { Own } from "./own";

/** One find in the catalogue. */
interface Found {
  prop: string;
  name: string;
  size: string;
}

/** Finds shown at once; the rest when asked for. */
const FIRST = 24;

function Row({ find }: { find: Found }): JSX.Element {
  const { prop, name, size } = find;
  const starred = picks.favourites.value.includes(prop);
  return (
    <li>
      <button onClick={() => put.thing(prop)}>
        <Small of={prop} draw={(core, svg, of) => core.draw_sample(svg, of)} />
        <span>
          {name} <small class="sans quiet">{size}</small>
        </span>
      </button>
      <button
        class="star"
        aria-pressed={starred}
        aria-label={say.favourite({ thing: name })}
        onClick={() => picks.star(prop)}
      >
        {starred ? "★" : "☆"}
      </button>
    </li>
  );
}

function MyRow({ thing }: { thing: Kept }): JSX.Element {
  return (
    <li>
      <button onClick={() => put.kept(thing.file)}>
        <Small of={thing.file} draw={(core, svg, of) => core.draw_file(svg, of, false)} />
        <span>{thing.title}</span>
      </button>
      <button
        class="star"
        aria-label={say.mineDelete({ thing: thing.title })}
        onClick={() => void mine.remove(thing)}
      >
        ×
      </button>
    </li>
  );
}

function Finds(props: { name: string; children: ComponentChildren }): JSX.Element {
  return (
    <>
      <h3>{props.name}</h3>
      <ul class="finds" aria-label={props.name}>
        {props.children}
      </ul>
    </>
  );
}

/** A list of finds, the first of them until more is asked for. */
function All({ name, finds }: { name: string; finds: Found[] }): JSX.Element {
  const shown = useSignal(FIRST);
  const more = finds.length - shown.value;
  return (
    <>
      <Finds name={name}>
        {finds.slice(0, shown.value).map((find) => (
          <Row key={find.prop} find={find} />
        ))}
      </Finds>
      {more > 0 ? (
        <button class="word" onClick={() => (shown.value = finds.length)}>
          {say.addMore({ count: more })}
        </button>
      ) : null}
    </>
  );
}

/** Own things first, then what is picked often. */
function Often(): JSX.Element {
  const core = session.core();
  const often = [
    [say.favourites, core.known(picks.favourites.value) as Found[]],
    [say.addLast, core.known(picks.recent.value) as Found[]],
  ] as const;
  return (
    <>
      {mine.mine.value.length === 0 ? null : (
        <Finds name={say.mine}>
          {mine.mine.value.map((thing) => (
            <MyRow key={thing.id} thing={thing} />
          ))}
        </Finds>
      )}
      {often.map(([name, finds]) =>
        finds.length === 0 ? null : <All key={name} name={name} finds={finds} />,
      )}
    </>
  );
}

function Searched({ words }: { words: string }): JSX.Element {
  const asked = words.toLowerCase();
  const found = session.core().search(words) as Found[];
  const own = mine.mine.value.filter(({ title }) => title.toLowerCase().includes(asked));
  const known = [...picks.favourites.value, ...picks.recent.value];
  const often = found.filter(({ prop }) => known.includes(prop));
  const finds = [...often, ...found.filter(({ prop }) => !known.includes(prop))];
  return (
    <>
      {own.length === 0 ? null : (
        <Finds name={say.mine}>
          {own.map((thing) => (
            <MyRow key={thing.id} thing={thing} />
          ))}
        </Finds>
      )}
      {finds.length === 0 ? (
        <p class="quiet" role="status">
          {say.addNothing}
        </p>
      ) : (
        <All key={words} name={say.addFound} finds={finds} />
      )}
    </>
  );
}

export function Add(): JSX.Element {
  const words = useSignal("");
  const group = useSignal<Found | undefined>(undefined);
  useEffect(() => void mine.list(), []);
  const core = session.core();
  const asked = words.value.trim();
  const open = group.value;
  return (
    <section class="panel" aria-label={say.add}>
      <Search name={say.addSearch} value={words.value} take={(to) => (words.value = to)} />
      {asked !== "" ? (
        <Searched words={asked} />
      ) : open !== undefined ? (
        <>
          <button class="word" onClick={() => (group.value = undefined)}>
            {say.addBack}
          </button>
          <All key={open.prop} name={open.name} finds={core.of_group(open.prop) as Found[]} />
        </>
      ) : (
        <>
          <Often />
          <h3>{say.addGroups}</h3>
          <ul class="groups" aria-label={say.addGroups}>
            {(core.groups() as Found[]).map((each) => (
              <li key={each.prop}>
                <button onClick={() => (group.value = each)}>{each.name}</button>
              </li>
            ))}
          </ul>
        </>
      )}
      <Own />
    </section>
  );
}
