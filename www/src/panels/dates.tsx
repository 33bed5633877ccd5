// Dates: when the picture is wanted, and the plan back from there to the brief.

import type { JSX } from "preact";
import * as say from "#words";

import { act } from "../acts";
import type { Layout } from "../core";
import { change, stamp, today, type BackPlan, type Dates, type Entry, type Seasonal, type Step } from "../dates";
import { Choice, useHeld } from "../parts/controls";
import { Save } from "../parts/save";
import * as session from "../session";
import * as state from "../state";

/** When it is wanted, in what, and on which half of the earth it is shot. */
function Wanted({ dates }: { dates: Dates }): JSX.Element {
  return (
    <>
      <label class="field">
        <span>{say.wanted}</span>
        <input
          type="date"
          min="2000-01-01"
          max="2199-12-31"
          ref={useHeld<HTMLInputElement>(dates.on_sale ?? "")}
          onChange={(event) => {
            // A year that is being typed is none yet, nor is a day half cleared.
            const { value: day, validity } = event.currentTarget;
            if (validity.valid) act.dates({ ...dates, on_sale: day === "" ? undefined : day });
          }}
          onBlur={(event) => {
            const field = event.currentTarget;
            if (!field.validity.valid) field.value = dates.on_sale ?? "";
          }}
        />
      </label>
      <Choice
        name={say.wantedIn}
        options={[
          ["print", say.wantedPrint],
          ["web", say.wantedWeb],
        ]}
        value={dates.medium ?? "print"}
        choose={(medium) => act.dates({ ...dates, medium })}
      />
      <Choice
        name={say.shotOn}
        options={[
          ["north", say.shotNorth],
          ["south", say.shotSouth],
        ]}
        value={dates.hemisphere ?? "north"}
        choose={(hemisphere) => act.dates({ ...dates, hemisphere })}
      />
    </>
  );
}

/** A step's figure: by a tap, or written. */
function Days({ dates, step }: { dates: Dates; step: Step }): JSX.Element {
  const to = (days: number): void => change.days(dates, step, days);
  return (
    <div class="line" role="group" aria-label={say.stepDays({ step: step.name })}>
      <span class="name">{step.counted}</span>
      <span class="stepper">
        <button type="button" aria-label={say.stepFewer({ step: step.name })} onClick={() => to(step.days - 1)}>
          −
        </button>
        <input
          type="number"
          inputMode="numeric"
          min={0}
          max={say.MAX_STEP_DAYS}
          aria-label={step.counted}
          ref={useHeld<HTMLInputElement>(String(step.days))}
          onChange={(event) => {
            const days = event.currentTarget.valueAsNumber;
            if (Number.isNaN(days)) event.currentTarget.value = String(step.days);
            else to(Math.round(days));
          }}
        />
        <button type="button" aria-label={say.stepMore({ step: step.name })} onClick={() => to(step.days + 1)}>
          +
        </button>
      </span>
    </div>
  );
}

function Row({ dates, step }: { dates: Dates; step: Step }): JSX.Element {
  return (
    <li>
      <p>
        <b>{step.name}</b>
        <span class="sans">{step.spoken}</span>
      </p>
      {step.warnings.map((warning) => (
        <p key={warning} class="warned">
          {warning}
        </p>
      ))}
      {step.note === "" ? null : <p class="quiet">{step.note}</p>}
      {step.key === "" ? null : (
        <>
          <Days dates={dates} step={step} />
          <details>
            <summary class="quiet">{step.told ? say.stepTold : say.stepUsual}</summary>
            <p class="quiet">{step.ground}</p>
            {step.told ? (
              <button class="word" onClick={() => change.days(dates, step, undefined)}>
                {say.stepAsUsual}
              </button>
            ) : null}
          </details>
        </>
      )}
    </li>
  );
}

interface Own {
  dates: Dates;
  food: Seasonal;
  /** Names of the months. */
  months: readonly string[];
}

/** When a food is in season, to be changed by who knows better. */
function Months({ dates, food, months }: Own): JSX.Element {
  const [from, to] = food.months ?? [1, 12];
  const always = from === 1 && to === 12;
  const options = months.map((month, n) => (
    <option key={month} value={n + 1}>
      {month}
    </option>
  ));
  return (
    <li>
      <p>
        <b>{food.name}</b>
        <span class="sans">{food.spoken}</span>
      </p>
      <div class="pair" role="group" aria-label={food.name}>
        <label class="field">
          <span>{say.seasonFrom}</span>
          <select
            value={always ? 0 : from}
            onChange={(event) => {
              const month = Number(event.currentTarget.value);
              change.months(dates, food, month === 0 ? [1, 12] : [month, always ? month : to]);
            }}
          >
            <option value={0}>{say.seasonAlways}</option>
            {options}
          </select>
        </label>
        {always ? null : (
          <label class="field">
            <span>{say.seasonTo}</span>
            <select
              value={to}
              onChange={(event) => change.months(dates, food, [from, Number(event.currentTarget.value)])}
            >
              {options}
            </select>
          </label>
        )}
      </div>
      {food.told ? (
        <button class="word" onClick={() => change.months(dates, food, undefined)}>
          {say.seasonAsKnown}
        </button>
      ) : null}
    </li>
  );
}

function Plan({ dates, plan }: { dates: Dates; plan: BackPlan }): JSX.Element {
  const lead = state.report.value?.findings.find(({ key }) => key === "timing:lead");
  return (
    <>
      {lead === undefined ? null : <p>{lead.sentence}</p>}
      {plan.warnings.map((warning) => (
        <p key={warning} class="warned">
          {warning}
        </p>
      ))}
      <ol class="dated" aria-label={say.plan}>
        {plan.steps.map((step) => (
          <Row key={step.key} dates={dates} step={step} />
        ))}
      </ol>
      {plan.foods.length === 0 ? null : (
        <details>
          <summary>{say.seasons}</summary>
          <p class="quiet">{say.seasonsWhat}</p>
          <ul class="dated" aria-label={say.seasons}>
            {plan.foods.map((food) => (
              <Months key={food.food} dates={dates} food={food} months={plan.months} />
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

export function DatesPart({ layout, name }: { layout: Layout; name: string }): JSX.Element {
  const dates = layout.dates ?? {};
  const plan = session.core().back_plan(today()) as BackPlan | null;
  return (
    <section class="panel" aria-label={say.dates}>
      <h3>{say.dates}</h3>
      <Wanted dates={dates} />
      {plan === null ? (
        <p class="quiet">{say.datesNone}</p>
      ) : (
        <>
          <Plan dates={dates} plan={plan} />
          <Save
            name={`${name}-dates`}
            title={layout.title}
            calendar={() => ({ days: session.core().calendar_days() as Entry[], stamp: stamp() })}
          />
        </>
      )}
    </section>
  );
}
