// Fingers on the picture, turned into a few plain acts: tap, drag, pan, pinch.

import type { Window } from "./stage";

/** What the picture does with fingers. Places are on the table, mm. */
export interface Acts {
  /** Whether any finger is down. */
  touched?: (is: boolean) => void;
  /** Takes hold of what can be dragged there; false when there is nothing. */
  grab(x: number, y: number, touch: boolean): boolean;
  /** Follows the finger: how far it has come, mm. */
  drag(dx: number, dy: number, finger: Finger): void;
  drop(): void;
  abandon(): void;
  /** `more` asks for it along with what is chosen: a key is held. */
  tap(x: number, y: number, more: boolean): void;
  /** Whether each tap counts, and none of them fits the picture. */
  counts(): boolean;
  /** Starts turning when the place is on the handle. */
  handle(x: number, y: number, touch: boolean): boolean;
  turn(x: number, y: number, finger: Finger): void;
  turned(): void;
}
/** Where the finger is within the picture, and whether it hides what is below. */
export interface Finger {
  x: number;
  y: number;
  touch: boolean;
}

/** Whether a key is meant for the browser or the system; what only a held key can write, as "[" on some boards, is not. */
export function meantElsewhere({ key, altKey, ctrlKey, metaKey }: KeyboardEvent): boolean {
  return metaKey || ((altKey || ctrlKey) && !(altKey && key.length === 1));
}

const TAP_PX = 7;
const DOUBLE_MS = 300;
const DOUBLE_PX = 28;

type Doing = "nothing" | "pressed" | "dragging" | "turning" | "panning" | "pinching";

/** Listens on `element`; returns what abandons the action in hand (for Escape). */
export function listen(element: HTMLElement, view: Window, acts: Acts): () => void {
  const fingers = new Map<number, [number, number]>();
  let doing: Doing = "nothing";
  let from: [number, number] = [0, 0];
  let start: [number, number] = [0, 0];
  /** Whether the finger went further than one that trembles. */
  let moved = false;
  let lastTap = { at: 0, x: 0, y: 0 };
  let queued: (() => void) | undefined;
  /** Where the picture is on the screen; asked for when a finger comes down. */
  let box = new DOMRect();

  /** Runs the newest of what was asked, once per frame. */
  const soon = (act: () => void): void => {
    const waiting = queued !== undefined;
    queued = act;
    if (waiting) return;
    requestAnimationFrame(() => {
      const run = queued;
      queued = undefined;
      run?.();
    });
  };
  const flush = (): void => {
    const run = queued;
    queued = undefined;
    run?.();
  };
  const abandon = (): void => {
    queued = undefined;
    if (doing === "dragging" || doing === "turning") acts.abandon();
    doing = "nothing";
  };
  const within = (x: number, y: number): [number, number] => [x - box.left, y - box.top];
  const finger = (event: PointerEvent): Finger => {
    return {
      x: event.clientX - box.left,
      y: event.clientY - box.top,
      touch: event.pointerType !== "mouse",
    };
  };

  element.addEventListener("pointerdown", (event) => {
    // A control on the picture is tapped, not dragged.
    if (event.button > 0 || (event.target as Element).closest("button") !== null) return;
    element.setPointerCapture(event.pointerId);
    box = element.getBoundingClientRect();
    fingers.set(event.pointerId, [event.clientX, event.clientY]);
    acts.touched?.(true);
    if (fingers.size === 2) {
      abandon();
      doing = "pinching";
      return;
    }
    if (fingers.size > 2) return;
    from = [event.clientX, event.clientY];
    start = view.at(...within(...from));
    moved = false;
    doing = acts.handle(...start, event.pointerType !== "mouse") ? "turning" : "pressed";
  });

  element.addEventListener("pointermove", (event) => {
    const before = fingers.get(event.pointerId);
    if (before === undefined) return;
    const now: [number, number] = [event.clientX, event.clientY];
    if (doing === "pinching") {
      pinch(event.pointerId, now);
      return;
    }
    fingers.set(event.pointerId, now);
    moved ||= Math.hypot(now[0] - from[0], now[1] - from[1]) >= TAP_PX;
    if (!moved) return;
    if (doing === "pressed") {
      doing = acts.grab(...start, event.pointerType !== "mouse") ? "dragging" : "panning";
    }
    if (doing === "panning") view.pan(now[0] - before[0], now[1] - before[1]);
    const place = finger(event);
    const [x, y] = view.at(...within(...now));
    if (doing === "dragging") soon(() => acts.drag(x - start[0], y - start[1], place));
    if (doing === "turning") soon(() => acts.turn(x, y, place));
  });

  const pinch = (id: number, now: [number, number]): void => {
    const [one, other] = [...fingers.entries()];
    if (one === undefined || other === undefined) return;
    const still = one[0] === id ? other[1] : one[1];
    const before = fingers.get(id) ?? now;
    fingers.set(id, now);
    const was = Math.hypot(before[0] - still[0], before[1] - still[1]);
    const is = Math.hypot(now[0] - still[0], now[1] - still[1]);
    view.pan((now[0] - before[0]) / 2, (now[1] - before[1]) / 2);
    if (was > 0 && is > 0) {
      view.zoom(is / was, ...view.at(...within((now[0] + still[0]) / 2, (now[1] + still[1]) / 2)));
    }
  };

  element.addEventListener("pointerup", (event) => {
    if (!fingers.delete(event.pointerId)) return;
    flush();
    if (doing === "dragging") acts.drop();
    if (doing === "turning") acts.turned();
    if (doing === "pressed") tapped(event);
    if (fingers.size === 0) doing = "nothing";
    acts.touched?.(fingers.size > 0);
  });
  element.addEventListener("pointercancel", (event) => {
    fingers.delete(event.pointerId);
    abandon();
    acts.touched?.(fingers.size > 0);
  });

  const tapped = (event: PointerEvent): void => {
    const { clientX: x, clientY: y, timeStamp: at } = event;
    const near = Math.hypot(x - lastTap.x, y - lastTap.y) < DOUBLE_PX;
    const more = event.shiftKey || event.ctrlKey || event.metaKey;
    if (near && at - lastTap.at < DOUBLE_MS && !more && !acts.counts()) {
      view.refit();
      lastTap = { at: 0, x, y };
      return;
    }
    lastTap = { at, x, y };
    acts.tap(...start, more);
  };

  element.addEventListener(
    "wheel",
    (event) => {
      event.preventDefault();
      const factor = Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0015));
      box = element.getBoundingClientRect();
      view.zoom(factor, ...view.at(...within(event.clientX, event.clientY)));
    },
    { passive: false },
  );
  return abandon;
}
