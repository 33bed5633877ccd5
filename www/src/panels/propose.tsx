// What the planner would move: what it may, how far it is, and each proposal with
// its moves, what gets better and what it costs. The one that is open is shown
// on the picture as ghosts.

import type { JSX } from "preact";
import * as say from "#words";

import type { Differs, Proposal } from "../asked";
import type { Finding } from "../core";
import { Tape } from "../parts/controls";
import * as proposals from "../proposals";
import * as state from "../state";

const MAY: Record<(typeof proposals.MAY)[number], string> = {
  dishes: say.mayDishes,
  linens: say.mayLinens,
  hands: say.mayHands,
  crops: say.mayCrops,
  light: say.mayLight,
};
const MOST: Record<(typeof proposals.MOST)[number], string> = {
  edges: say.mostEdges,
  crops: say.mostCrops,
  hands: say.mostHands,
  weight: say.mostWeight,
  light: say.mostLight,
};

/** A row of words of which any number may be on. */
function Several<T extends string>(props: {
  name: string;
  words: Record<T, string>;
  on: readonly string[];
  take: (on: string[]) => void;
}): JSX.Element {
  const flip = (key: string): void =>
    props.take(props.on.includes(key) ? props.on.filter((each) => each !== key) : [...props.on, key]);
  return (
    <div class="field" role="group" aria-label={props.name}>
      <span>{props.name}</span>
      <div class="steps">
        {(Object.entries(props.words) as [T, string][]).map(([key, word]) => (
          <button type="button" key={key} aria-pressed={props.on.includes(key)} onClick={() => flip(key)}>
            {word}
          </button>
        ))}
      </div>
    </div>
  );
}

/** How far a search is, with a way to end it. */
function Progress(): JSX.Element | null {
  const at = proposals.underWay.value;
  if (at === undefined) return null;
  const told = say.proposeProgress({ spent: String(at.spent), all: String(at.all) });
  return (
    <div class="looking">
      <progress max={at.all} value={at.spent} aria-label={told} />
      <span class="quiet">{told}</span>
      <button class="word" onClick={proposals.stop}>
        {say.proposeStop}
      </button>
    </div>
  );
}

const score = (points: number | null | undefined): string =>
  points === null || points === undefined ? "–" : String(Math.round(points));

/** The three scores before and after. */
function Scores({ proposal }: { proposal: Proposal }): JSX.Element | null {
  const [before, after] = proposal.scores;
  if (before === null || after === null) return null;
  const both = (name: keyof typeof before): string =>
    say.proposeFromTo({ before: score(before[name]), after: score(after[name]) });
  return (
    <p class="quiet">
      {say.proposeScores({
        balance: both("balance"),
        triangle: both("triangle"),
        separation: both("separation"),
      })}
    </p>
  );
}

function List(props: { title: string; all: Differs[]; none?: string }): JSX.Element | null {
  if (props.all.length === 0 && props.none === undefined) return null;
  return (
    <>
      <h4>{props.title}</h4>
      {props.all.length === 0 ? <p class="was">{props.none}</p> : null}
      <ul class="told">
        {props.all.map(({ key, sentence }) => (
          <li key={key}>{sentence}</li>
        ))}
      </ul>
    </>
  );
}

/** One change of a proposal: a tap shows it alone, its button makes it. */
function Move(props: { proposal: Proposal; n: number; at: number }): JSX.Element | null {
  const move = props.proposal.moves[props.at];
  if (move === undefined) return null;
  const fit = proposals.fit(move.record);
  const alone = proposals.shown.value?.move === props.at;
  const toggle = (): void =>
    void (proposals.shown.value = alone ? { proposal: props.n } : { proposal: props.n, move: props.at });
  const first = move.sentences[0] ?? "";
  return (
    <li class="move">
      <button aria-pressed={alone} aria-label={say.proposeShow({ sentence: move.sentences.join(" ") })} onClick={toggle}>
        {move.sentences.map((sentence) => (
          <span key={sentence}>{sentence}</span>
        ))}
      </button>
      {fit === "open" ? (
        <button
          class="word"
          aria-label={`${say.proposeDo}: ${first}`}
          onClick={() => proposals.acceptOne(props.proposal, props.at)}
        >
          {say.proposeDo}
        </button>
      ) : (
        <span class="quiet">{fit === "done" ? say.proposeDone : say.proposeStale}</span>
      )}
    </li>
  );
}

/** One proposal; open it is on the picture. */
function One({ proposal, n }: { proposal: Proposal; n: number }): JSX.Element {
  const open = proposals.shown.value?.proposal === n;
  const left = proposals.left(proposal).length;
  const figures = [say.proposeMoves({ count: proposal.moves.length }), say.proposeBetter({ count: String(proposal.better.length) })];
  if (proposal.worse.length > 0) figures.push(say.proposeWorse({ count: String(proposal.worse.length) }));
  return (
    <li class="way" ref={open ? proposals.bring : null}>
      <button
        aria-expanded={open}
        onClick={() => (proposals.shown.value = open ? undefined : { proposal: n })}
      >
        <b>{proposal.name}</b>
        <span class="quiet">{figures.join(", ")}</span>
      </button>
      {open ? (
        <div>
          {left > 0 ? (
            <Tape
              act={left < proposal.moves.length ? say.proposeRest : say.proposeAll}
              predicted={say.proposeMoves({ count: left })}
              onClick={() => proposals.acceptAll(proposal)}
            />
          ) : null}
          <Scores proposal={proposal} />
          <h4>{say.proposeListMoves}</h4>
          <ul>
            {proposal.moves.map((move, at) => (
              <Move key={move.record} proposal={proposal} n={n} at={at} />
            ))}
          </ul>
          <List title={say.proposeListBetter} all={proposal.better} />
          <List title={say.proposeListWorse} all={proposal.worse} none={say.proposeNoCost} />
        </div>
      ) : null}
    </li>
  );
}

/** What was found for the whole table, or for one finding. */
function Ways({ of }: { of: string }): JSX.Element | null {
  const all = proposals.found.value;
  if (proposals.cure.value !== of || all === undefined) return null;
  const nothing = of === "" ? say.proposeNone : say.proposeCureNone;
  return (
    <div class="ways" ref={proposals.bring}>
      <p class={all.length === 0 ? "was" : "away"} role="status">
        {all.length === 0 ? nothing : say.proposeFound({ count: all.length })}
      </p>
      <ul aria-label={say.proposeWays}>
        {all.map((proposal, n) => (
          <One key={proposal.record} proposal={proposal} n={n} />
        ))}
      </ul>
      {all.length > 0 && proposals.underWay.value === undefined ? (
        <button class="quiet" onClick={proposals.forget}>
          {say.proposeForget}
        </button>
      ) : null}
    </div>
  );
}

/** A way out of one finding, looked for on the spot. */
export function WayOut({ finding, open }: { finding: Finding; open: boolean }): JSX.Element | null {
  const pressing = finding.state === "wont-work" || finding.state === "look-again";
  const here = proposals.cure.value === finding.key;
  const busy = here && proposals.underWay.value !== undefined;
  if (!pressing || finding.taste || state.stage.value !== "work") return null;
  const offered = !busy && (open || !finding.remedy) && !(here && proposals.found.value !== undefined);
  return (
    <>
      {offered ? (
        <button class="word" onClick={() => proposals.look(finding.key)}>
          {say.proposeCureLook}
        </button>
      ) : null}
      {busy ? <Progress /> : null}
      {here ? <Ways of={finding.key} /> : null}
    </>
  );
}

/** The panel: what may be moved, what matters most, and what was found. */
export function Propose(): JSX.Element {
  const whole = proposals.cure.value === "";
  const busy = proposals.underWay.value !== undefined;
  const again = whole && proposals.found.value !== undefined;
  const none = proposals.may.value.length === 0;
  return (
    <details class="propose">
      <summary>{say.proposeTitle}</summary>
      <p class="was">{say.proposeAbout}</p>
      <Several name={say.proposeMay} words={MAY} on={proposals.may.value} take={(on) => (proposals.may.value = on)} />
      <Several name={say.proposeMost} words={MOST} on={proposals.most.value} take={(on) => (proposals.most.value = on)} />
      {busy && whole ? (
        <Progress />
      ) : (
        <div class="steps">
          <button class="word" disabled={none} onClick={() => proposals.look("")}>
            {again ? say.proposeAgain : say.proposeLook}
          </button>
          {again ? (
            <button class="word" disabled={none} onClick={() => proposals.look("", true)}>
              {say.proposeFurther}
            </button>
          ) : null}
        </div>
      )}
      <Ways of="" />
    </details>
  );
}
