// The shelf: what the photographer owns, looked through and changed, put on the
// table, and listed in and out.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import { useEffect } from "preact/hooks";
import * as say from "#words";

import type { Layout } from "../core";
import * as csv from "../csv-in";
import * as mine from "../mine";
import { Choice, Colour, Field, Search, Stepper } from "../parts/controls";
import { FINDS, Known } from "../parts/known";
import { Save } from "../parts/save";
import { Small } from "../parts/small";
import * as put from "../put";
import * as session from "../session";
import * as state from "../state";
import * as units from "../units";
import { SizePhoto } from "./size-photo";

/** Things shown at once; the rest when asked for. */
const FIRST = 24;
/** Narrowest and widest thing, mm, as the core has it. */
const RANGE = [1, 10_000] as const;
const MOST = 1000;

const FINISHES: readonly (readonly [mine.Finish, string])[] = [
  ["matt", say.finishMatt],
  ["satin", say.finishSatin],
  ["gloss", say.finishGloss],
  ["clear", say.finishClear],
  ["liquid", say.finishLiquid],
];

const inches = (): boolean => state.layout.value?.units === "in";
const perUnit = (): number => (inches() ? 25.4 : 10);

/** A length that is typed. */
function Length(props: { name: string; mm: number; take: (mm: number) => void }): JSX.Element {
  return (
    <Field
      name={props.name}
      mode="decimal"
      value={String(Math.round((props.mm / perUnit()) * 100) / 100)}
      take={(text) => {
        const mm = Math.round(Number(text.replace(",", ".")) * perUnit());
        if (mm >= RANGE[0] && mm <= RANGE[1]) return props.take(mm);
        state.fault.value = say.addRange({ least: units.length(RANGE[0]), most: units.length(RANGE[1]) });
      }}
    />
  );
}

/** What is known of one thing, to be changed. */
function Told({ kept, owned }: { kept: mine.Shelved["kept"]; owned: mine.Owned }): JSX.Element {
  const { name, size, count } = owned;
  const [across, down] = size;
  const alter = (to: mine.Change): void => void mine.alter(kept, to);
  const unit = inches() ? say.unitsIn : say.unitsCm;
  const round = across === down;
  return (
    <>
      <Stepper
        name={say.shelfCount}
        value={String(count)}
        less={say.shelfFewer({ thing: name })}
        more={say.shelfMore({ thing: name })}
        step={(by) => alter(["count", Math.max(1, Math.min(MOST, count + by))])}
      />
      <Field name={say.listsShelf} value={owned.place} take={(place) => alter(["place", place])} />
      <details>
        <summary>{say.shelfLooks}</summary>
        <Field name={say.name} value={name} take={(to) => alter(["name", to])} />
        <Length
          name={say.addAcross({ unit })}
          mm={across}
          take={(mm) => alter(["size", [mm, round ? mm : down]])}
        />
        <Length name={say.addDown({ unit })} mm={down} take={(mm) => alter(["size", [across, mm]])} />
        {owned.cloth ? null : (
          <Length name={say.shelfHigh({ unit })} mm={owned.height} take={(height) => alter(["height", height])} />
        )}
        <Colour name={say.colour} value={owned.colour} take={(colour) => alter(["colour", colour])} />
        {owned.cloth ? null : (
          <Choice
            name={say.shelfFinish}
            options={FINISHES}
            value={owned.finish}
            choose={(finish) => alter(["finish", finish])}
          />
        )}
      </details>
    </>
  );
}

function Row({ kept, owned }: mine.Shelved): JSX.Element {
  const size = owned?.size.map((mm) => units.length(mm)) ?? [];
  const told = owned?.size[0] === owned?.size[1] ? size.slice(0, 1) : size;
  return (
    <li>
      <details>
        <summary>
          <Small of={kept.file} draw={(core, svg, of) => core.draw_file(svg, of, false)} />
          <span>
            <b>{kept.title}</b> <span class="sans">× {owned?.count ?? 1}</span>
            <br />
            <small class="sans quiet">{[...told, owned?.place ?? ""].filter((each) => each !== "").join(" · ")}</small>
          </span>
        </summary>
        <div class="panel">
          {owned === null ? <p role="alert">{say.shelfUnread}</p> : <Told kept={kept} owned={owned} />}
          <div class="steps">
            <button class="tape" onClick={() => put.kept(kept.file)}>
              {say.shelfPut}
            </button>
            <button
              class="word"
              aria-label={say.shelfAwayOf({ thing: kept.title })}
              onClick={() => void mine.remove(kept)}
            >
              {say.shelfAway}
            </button>
          </div>
        </div>
      </details>
    </li>
  );
}

/** The things, those first that fit what is typed. */
function Things(): JSX.Element {
  const asked = useSignal("");
  const shown = useSignal(FIRST);
  const words = asked.value.trim().toLowerCase();
  const all = mine.shelf.value.filter(({ kept, owned }) =>
    [kept.title, owned?.what ?? "", owned?.place ?? ""].some((text) => text.toLowerCase().includes(words)),
  );
  const more = all.length - shown.value;
  return (
    <>
      {mine.shelf.value.length > FINDS ? (
        <Search name={say.shelfSearch} value={asked.value} take={(to) => (asked.value = to)} />
      ) : null}
      <ul class="list listed owned" aria-label={say.mine}>
        {all.slice(0, shown.value).map((each) => (
          <Row key={each.kept.id} {...each} />
        ))}
      </ul>
      {more > 0 ? (
        <button class="word" onClick={() => (shown.value += 10 * FIRST)}>
          {say.addMore({ count: more })}
        </button>
      ) : null}
    </>
  );
}

/** Adds one of a thing of the catalogue. */
const FromCatalogue = (): JSX.Element => (
  <details>
    <summary>{say.shelfAdd}</summary>
    <Known name={say.shelfAdd} take={(prop) => void mine.keepKnown(prop)} />
  </details>
);

/** A list of another program: told first, then taken or left. */
function FromList(): JSX.Element {
  const read = useSignal<csv.Import | undefined>(undefined);
  const fault = useSignal("");
  const open = async (input: HTMLInputElement): Promise<void> => {
    const [file] = input.files ?? [];
    if (file === undefined) return;
    [read.value, fault.value] = [undefined, ""];
    try {
      await mine.list();
      read.value = await csv.read(file);
    } catch (error) {
      fault.value = say.csvNotRead({ file: file.name, why: session.message(error) });
    }
    input.value = "";
  };
  const found = read.value;
  const { good, bad, passed_over: passed } = found ?? { good: [], bad: [], passed_over: [] };
  const there = good.filter((each) => each.there).length;
  return (
    <>
      <label class="field">
        <span>{say.csvChoose}</span>
        <input type="file" accept=".csv,.tsv,.txt,text/csv" onChange={(event) => void open(event.currentTarget)} />
      </label>
      {fault.value === "" ? null : <p role="alert">{fault.value}</p>}
      {found === undefined ? null : (
        <div class="panel" role="status">
          <p>{say.csvFound({ good: String(good.length), bad: String(bad.length) })}</p>
          {there === 0 ? null : <p>{say.csvThere({ count: there })}</p>}
          {passed.length === 0 ? null : <p>{say.csvPassed({ columns: passed.join(", ") })}</p>}
          {bad.length === 0 ? null : (
            <details open={bad.length <= FINDS}>
              <summary>{say.csvBad({ count: bad.length })}</summary>
              <ul aria-label={say.csvBad({ count: bad.length })}>
                {bad.map(([line, why]) => (
                  <li key={line}>{say.csvLine({ line: String(line), why })}</li>
                ))}
              </ul>
            </details>
          )}
          <div class="steps">
            {good.length === 0 ? null : (
              <button
                class="tape"
                onClick={() => void csv.take(found).then((kept) => kept && (read.value = undefined))}
              >
                {say.csvTake({ count: good.length })}
              </button>
            )}
            <button class="word" onClick={() => (read.value = undefined)}>
              {say.csvLeave}
            </button>
          </div>
        </div>
      )}
    </>
  );
}

export function OwnShelf({ layout }: { layout: Layout }): JSX.Element {
  useEffect(() => void mine.list(), []);
  const count = mine.mine.value.length;
  const told = count === 0 ? "" : mine.knowing().shelf_told();
  const last = mine.before.value;
  return (
    <details class="panel">
      <summary>{say.mine}</summary>
      <div class="panel">
        <p class="quiet">{say.shelfWhat}</p>
        {count === 0 ? <p class="quiet">{say.shelfEmpty}</p> : <p>{say.shelfCounted({ count })}</p>}
        {told === "" ? null : <p>{told}</p>}
        {last === undefined ? null : (
          <p class="line" role="status">
            <span>{last.said}</span>
            <button class="word" onClick={() => void mine.takeBack()}>
              {say.shelfTakeBack}
            </button>
          </p>
        )}
        <Things />
        <FromCatalogue />
        <SizePhoto />
        <FromList />
        {count === 0 ? null : (
          <Save
            name={say.shelfFile}
            title={layout.title}
            rows={() => mine.knowing().shelf_rows() as string[][]}
          />
        )}
      </div>
    </details>
  );
}
