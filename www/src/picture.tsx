// The picture: the drawing with what is chosen on it, under the finger.

import { useEffect, useRef } from "preact/hooks";
import type { JSX } from "preact";
import { effect } from "@preact/signals";

import * as say from "#words";

import * as about from "./about";
import { act } from "./acts";
import * as brush from "./brush";
import { listen, type Finger } from "./gestures";
import { keys } from "./keys";
import { Overlay } from "./overlay";
import { Filters, seenAs } from "./panels/sight";
import { Ways } from "./parts/ways";
import * as places from "./places";
import * as readings from "./readings";
import * as seen from "./seen";
import * as several from "./several";
import * as session from "./session";
import { framed, Window, type Seen } from "./stage";
import * as state from "./state";
import * as trail from "./trail";

/** Taps nearer than this are on the same spot, mm. */
const SAME_SPOT_MM = 25;

/** Brings what is spoken of into sight: what is chosen, or else what the open finding is about. */
function reveal(view: Window): void {
  const [chosen, open] = [state.chosen.value, state.openFinding.value];
  const found = state.report.peek()?.findings.find(({ key }) => key === open);
  const id = chosen ?? found?.about[0];
  const points = id === undefined ? [] : session.core().outline(id);
  if (points.length === 0) return;
  const middle = (from: number): number => {
    const along = [...points].filter((_, n) => n % 2 === from);
    return (Math.min(...along) + Math.max(...along)) / 2;
  };
  view.reveal(middle(0), middle(1));
}

/** What is seen at rest: the frame, a hand's breadth around it, and what waits beside the table. */
function whole(): Seen {
  const frame = state.layout.value?.frame;
  if (frame === undefined) return { x: 0, y: 0, width: 1000, height: 700 };
  const { x, y, width, height } = framed(frame, 0);
  const [dx, dy] = [width * 0.055, width * 0.13];
  let [left, top] = [x - dx, y - dy];
  let [right, bottom] = [x + width + dx, y + height + 0.7 * dy];
  const [x0, y0, x1, y1] = session.core().waiting();
  if (x0 !== undefined && y0 !== undefined && x1 !== undefined && y1 !== undefined) {
    left = Math.min(left, x0 - dx * 0.4);
    top = Math.min(top, y0 - dx * 0.4);
    right = Math.max(right, x1 + dx * 0.4);
    bottom = Math.max(bottom, y1 + dx * 0.4);
  }
  const [x2, y2, x3, y3] = state.rigged.value ? session.core().rig_span(!state.lit.value) : [];
  if (x2 !== undefined && y2 !== undefined && x3 !== undefined && y3 !== undefined) {
    left = Math.min(left, x2 - dx);
    top = Math.min(top, y2 - dx);
    right = Math.max(right, x3 + dx);
    bottom = Math.max(bottom, y3 + dx);
  }
  const [x4, y4, x5, y5] = state.lit.value ? session.core().ring_span() : [];
  if (x4 !== undefined && y4 !== undefined && x5 !== undefined && y5 !== undefined) {
    const out = (x5 - x4) * 0.04;
    left = Math.min(left, x4 - out);
    top = Math.min(top, y4 - out);
    right = Math.max(right, x5 + out);
    bottom = Math.max(bottom, y5 + out);
  }
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** Height of the picture on a phone, px: as the frame asks, leaving room for words. */
function tall(width: number): number {
  const seen = whole();
  return Math.round(
    Math.min((width * seen.height) / seen.width, Math.max(260, innerHeight * 0.52)),
  );
}

export function Picture(): JSX.Element {
  const box = useRef<HTMLDivElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  const drawing = useRef<SVGGElement>(null);
  const over = useRef<SVGSVGElement>(null);
  const written = useRef<SVGGElement>(null);
  const above = useRef<SVGGElement>(null);
  const lens = useRef<HTMLDivElement>(null);
  const sheet = useRef<Window | undefined>(undefined);

  useEffect(() => {
    const [element, under, upper, figure] = [box.current, svg.current, over.current, lens.current];
    const [things, words, choice] = [drawing.current, written.current, above.current];
    if (!element || !under || !upper || !figure || !things || !words || !choice) return undefined;
    const overlay = new Overlay(choice, figure);
    const view = new Window(
      [under, upper],
      () => {
        session.setScale(view.scale);
        overlay.show(view);
      },
      (is) => (state.enlarged.value = is),
    );
    sheet.current = view;
    seen.follow(view);
    const size = (): void => {
      element.style.height = `${tall(element.clientWidth)}px`;
      view.fit(whole());
    };
    size();
    session.drawInto([things, words], view.scale);
    /** Where a line over the picture was begun. */
    let drawn: [number, number] | undefined;
    const put = (): void => {
      drawn = undefined;
      if (about.end(true) || places.end(true)) return overlay.rest(view);
      if (brush.up() || several.end()) return;
      if (!session.drop()) readings.abandoned();
      overlay.rest(view);
    };
    const abandon = listen(element, view, {
      touched: (is) => (state.touched.value = is),
      grab(x, y, finger) {
        if (state.stage.value === "first" || state.readOnly.value || still()) return false;
        const many = several.along.value.has(session.core().hit(x, y)[0] ?? 0);
        if (many && session.core().grab_picked(Uint16Array.from(state.picked.value))) {
          overlay.take(state.picked.value, finger);
          return true;
        }
        if (state.picking.value) several.begin(view, x, y);
        drawn = state.picking.value || brush.down(view, x, y) ? [x, y] : undefined;
        if (drawn !== undefined) return true;
        const card = about.card(view, x, y);
        if (card === 0 && about.take(view, x, y)) return true;
        if (places.take(view, x, y)) return true;
        const id = card || held(x, y);
        const inside = state.inside.value && id === state.chosen.value;
        if (id === 0 || !session.core().grab(id, inside)) return false;
        session.choose(id, inside);
        overlay.take([id], finger);
        return true;
      },
      drag(dx, dy, finger) {
        if (drawn !== undefined) return trail.on(drawn[0] + dx, drawn[1] + dy);
        const told = about.follow(dx, dy);
        if (told !== undefined) return overlay.tell(view, finger, told);
        if (places.follow(dx, dy)) return undefined;
        session.core().drag_to(dx, dy, 7 * view.scale);
        overlay.follow(view, finger);
        tell(0);
      },
      drop: put,
      abandon() {
        drawn = undefined;
        trail.end();
        if (about.end(false) || places.end(false)) return overlay.rest(view);
        session.core().let_go();
        readings.abandoned();
        overlay.rest(view);
      },
      tap: (x, y, more) => tap(view, x, y, more),
      counts: () => state.picking.value,
      handle(x, y, finger) {
        if (still() || state.readOnly.value || !overlay.onHandle(view, x, y)) return false;
        const [ids, core] = [inHand(), session.core()];
        const many = state.picked.value.length > 0;
        if (!(many ? core.grab_picked(Uint16Array.from(ids)) : core.grab(ids[0] ?? 0, state.inside.value))) return false;
        overlay.take(ids, finger);
        return true;
      },
      turn(x, y, finger: Finger) {
        tell(overlay.turn(view, x, y, finger) * 2);
      },
      turned: put,
    });
    const stopKeys = keys(element, view, abandon);
    const watch = new ResizeObserver(size);
    watch.observe(element.parentElement ?? element);
    // What stands beside it on a desk may take of its height.
    watch.observe(element);
    let last = "";
    const stop = effect(() => {
      const { frame: seen, linens, rig, table } = state.layout.value ?? {};
      const stood = state.rigged.value ? rig : undefined;
      const round = state.lit.value ? table : undefined;
      const frame = JSON.stringify([seen, linens, stood, round, state.lit.value, state.stage.value]);
      void state.chosen.value;
      void state.inside.value;
      void state.picked.value;
      if (frame !== last) {
        last = frame;
        size();
      }
      overlay.show(view);
    });
    const revealed = effect(() => reveal(view));
    const redrawn = effect(() => {
      void state.exposure.value;
      void state.workedIn.value;
      void state.crops.value;
      void state.rigged.value;
      void state.lit.value;
      void state.seated.value;
      void state.noted.value;
      void state.stage.value;
      void state.through.value;
      session.redrawAfter();
    });
    return () => {
      state.touched.value = false;
      seen.follow(undefined);
      stop();
      revealed();
      redrawn();
      stopKeys();
      watch.disconnect();
    };
  }, []);

  const frame = state.layout.value?.frame;
  return (
    <div
      class="picture"
      ref={box}
      tabIndex={0}
      role="group"
      aria-label={say.pictureLabel}
    >
      <svg ref={svg} aria-hidden="true">
        <Filters frame={frame} />
        <g ref={drawing} {...seenAs(state.seen.value, frame)} />
      </svg>
      {/* What changes in a drag, apart, so that the things below need not be painted again. */}
      <svg ref={over} aria-hidden="true">
        <g ref={written} {...seenAs(state.seen.value, frame)} />
        <g ref={above} class={still() ? "hidden" : undefined} />
        <g ref={trail.showOn}>
          <polyline class="trail" />
          <polyline class="trail" />
        </g>
      </svg>
      <div class="lens sans" ref={lens} hidden />
      {/* At work on the table its list of things tells the same, and more. */}
      {state.stage.value === "work" && state.place.value === "table" ? null : (
        <ul class="away" aria-label={say.clientList}>
          {state.things.value.map(({ id, number, name, where }) => (
            <li key={id}>
              {number} {name} <span>{where}</span>
            </li>
          ))}
        </ul>
      )}
      {state.stage.value === "first" ? null : (
        <Ways view={() => sheet.current} enlarged={state.enlarged.value} />
      )}
    </div>
  );
}

/** In a mirror and through the lens nothing is where a finger finds it: there it is only looked at. */
const still = (): boolean => state.seen.value === "mirror" || state.through.value;

/** Has the readings follow what is in hand. */
function tell(halfDegrees: number): void {
  const ids = inHand();
  const core = session.core();
  // What is moved in one exposure is read once it stands there.
  if (ids.length === 0 || state.workedIn.value !== 0) return;
  const [dx, dy] = halfDegrees === 0 ? [core.drag_x, core.drag_y] : [0, 0];
  readings.moved({ ids, alone: state.inside.value, dx, dy, halfDegrees });
}

/** What is picked, or the one thing that is chosen. */
function inHand(): readonly number[] {
  const [picked, chosen] = [state.picked.value, state.chosen.value];
  return picked.length > 0 || chosen === undefined ? picked : [chosen];
}

/** What a drag that starts here moves: the chosen thing if it is there, else the topmost. */
function held(x: number, y: number): number {
  const found = [...session.core().hit(x, y)];
  const chosen = state.chosen.value;
  if (chosen !== undefined && found.includes(chosen)) return chosen;
  const top = found.find((id) => !session.core().is_linen(id));
  return top === undefined ? 0 : session.core().root(top);
}

/** What is chosen has its panel in two places; from the others the page goes to the first. */
function choose(id: number | undefined, inside = false): void {
  session.choose(id, inside);
  if (id === undefined || state.stage.value !== "work") return;
  if (state.place.value !== "hands") state.place.value = "table";
}

/** What a tap takes at first: the group a thing's stack stands in, else the stack. */
function cluster(id: number): string {
  const root = session.core().root(id);
  const group = state.layout.value?.items.find((item) => item.id === root)?.group;
  return group === undefined ? `stack ${root}` : `group ${group}`;
}

/** Where the last tap was that went inside. */
let inner: [number, number] | undefined;

/**
 * A tap chooses the whole cluster. A second one goes inside, to the single
 * thing under the finger, and on the same spot to the next one below it.
 */
function tap(view: Window, x: number, y: number, more: boolean): void {
  if (state.stage.value === "first" || still()) return;
  if (brush.down(view, x, y)) return void brush.up();
  if (about.tap(view, x, y) || places.tap(view, x, y)) return;
  const core = session.core();
  // Cloth lies in every exposure as it is set.
  const fixed = (id: number): boolean => state.workedIn.value !== 0 && core.is_linen(id);
  const found = [...core.hit(x, y)].filter((id) => !fixed(id));
  state.which.value = [];
  if (mark(found)) return;
  if (state.picking.value || (more && state.stage.value === "work")) {
    const thing = found.find((id) => core.can_turn(id));
    if (thing !== undefined) several.toggle(thing);
    return;
  }
  several.leave();
  const [chosen, last] = [state.chosen.value, inner];
  inner = undefined;
  const [first] = found;
  if (first === undefined) return choose(undefined);
  if (chosen !== undefined && cluster(first) === cluster(chosen)) {
    const within = found.filter((id) => cluster(id) === cluster(chosen));
    if (core.can_turn(first)) {
      inner = [x, y];
      const again = last !== undefined && Math.hypot(x - last[0], y - last[1]) < SAME_SPOT_MM;
      const next = again ? within[(within.indexOf(chosen) + 1) % within.length] : first;
      if (within.length > 1) state.which.value = within;
      return choose(next, true);
    }
  }
  const each = found.filter((id, n) => found.findIndex((one) => cluster(one) === cluster(id)) === n);
  if (each.length > 1) state.which.value = each.map((id) => core.root(id));
  choose(core.root(first));
}

/** While a crop is told what it must show, a tap puts a thing on its list or takes it off. */
function mark(found: number[]): boolean {
  const [crop, thing] = [state.crop.value, found[0]];
  if (!state.marking.value || state.place.value !== "crops" || crop === undefined) return false;
  if (thing !== undefined) act.mustShow(crop, thing);
  return true;
}

/** By keyboard: the next single thing of the cluster that is chosen. */
export function goInside(): void {
  const chosen = state.chosen.value;
  if (chosen === undefined || !session.core().can_turn(chosen)) return;
  const items = state.layout.value?.items ?? [];
  const within = items.filter(({ id }) => cluster(id) === cluster(chosen)).map(({ id }) => id);
  const at = state.inside.value ? within.indexOf(chosen) + 1 : 0;
  session.choose(within[at % within.length] ?? chosen, true);
}

/** Moves what is chosen, in mm. */
export function nudge(dx: number, dy: number): void {
  const id = state.chosen.value;
  if (state.picked.value.length > 0) several.moveBy(dx, dy);
  else if (id !== undefined) act.moveBy(id, dx, dy);
}
