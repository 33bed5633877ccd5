// The table in another season: what would go and what would come is shown before
// it is taken, and nothing else.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import * as say from "#words";

import type { Id, Layout } from "../core";
import { Choice } from "../parts/controls";
import { Save } from "../parts/save";
import * as session from "../session";

type Season = "spring" | "summer" | "autumn" | "winter";
const SEASONS: readonly (readonly [Season, string])[] = [
  ["spring", say.seasonSpring],
  ["summer", say.seasonSummer],
  ["autumn", say.seasonAutumn],
  ["winter", say.seasonWinter],
];
/** What comes of a season: food that would go, why other food stays, and every row that changes. */
interface Plan {
  going: { ids: Id[]; numbers: string; name: string; instead: string }[];
  stay: string[];
  rows: string[][];
}

export function SeasonPart({ layout, name }: { layout: Layout; name: string }): JSX.Element {
  const season = useSignal<Season | undefined>(undefined);
  const [food, linen, board] = [useSignal(true), useSignal(true), useSignal(true)];
  const keep = useSignal<readonly Id[]>([]);
  const parts = [
    [say.seasonFood, food],
    [say.seasonLinen, linen],
    [say.seasonBoard, board],
  ] as const;
  const wish = { food: food.value, linen: linen.value, board: board.value };
  const plan = useMemo(() => {
    const of = (kept: readonly Id[]): Plan | undefined => {
      if (season.value === undefined) return undefined;
      return session.core().season_plan({ season: season.value, ...wish, keep: kept }) as Plan;
    };
    return { all: of([]), kept: of(keep.value) };
  }, [layout, season.value, food.value, linen.value, board.value, keep.value]);
  const rows = plan.kept?.rows ?? [];
  const changes = rows.slice(1);
  return (
    <details class="panel">
      <summary>{say.season}</summary>
      <div class="panel">
        <p class="quiet">{say.seasonWhat}</p>
        <Choice
          name={say.seasonInto}
          options={SEASONS}
          value={season.value}
          choose={(to) => [season.value, keep.value] = [to, []]}
        />
        {plan.kept === undefined ? null : (
          <>
            {parts.map(([label, on]) => (
              <label key={label} class="check">
                <input
                  type="checkbox"
                  checked={on.value}
                  onChange={(event) => (on.value = event.currentTarget.checked)}
                />
                <span>{label}</span>
              </label>
            ))}
            {plan.all === undefined || plan.all.going.length === 0 ? null : (
              <div class="field" role="group" aria-label={say.seasonKeep}>
                <span>{say.seasonKeep}</span>
                {plan.all.going.map(({ ids, name: thing, instead }) => (
                  <label key={ids[0]} class="check">
                    <input
                      type="checkbox"
                      checked={ids.every((id) => keep.value.includes(id))}
                      onChange={(event) => {
                        const rest = keep.value.filter((id) => !ids.includes(id));
                        keep.value = event.currentTarget.checked ? [...rest, ...ids] : rest;
                      }}
                    />
                    <span>{say.seasonInstead({ thing, instead })}</span>
                  </label>
                ))}
              </div>
            )}
            {plan.kept.stay.map((line) => (
              <p key={line} class="quiet">
                {line}
              </p>
            ))}
            {changes.length === 0 ? (
              <p role="status">{say.seasonNone}</p>
            ) : (
              <>
                <p role="status">{say.seasonRows({ count: changes.length })}</p>
                <ul class="list listed" aria-label={say.seasonDifference}>
                  {changes.map(([change, , number, thing, size, looks, count, allergens], n) => (
                    <li key={n}>
                      <b>
                        {change}: {thing}
                      </b>{" "}
                      <span class="sans">
                        {number} × {count}
                      </span>
                      <br />
                      <small class="sans quiet">
                        {[size, looks, allergens].filter((each) => each).join(" · ")}
                      </small>
                    </li>
                  ))}
                </ul>
                <button
                  class="tape"
                  onClick={() => {
                    const { value: to } = season;
                    if (to === undefined) return;
                    const asked = { season: to, ...wish, keep: keep.value };
                    session.act(() => session.core().season_take(asked));
                  }}
                >
                  {say.seasonTake}
                </button>
                <Save name={`${name}-${season.value ?? ""}`} title={layout.title} rows={() => rows} />
              </>
            )}
          </>
        )}
      </div>
    </details>
  );
}
