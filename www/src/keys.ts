// The picture by keyboard: every drag has a way without one.

import { act } from "./acts";
import { meantElsewhere } from "./gestures";
import { goInside, nudge } from "./picture";
import * as several from "./several";
import * as session from "./session";
import type { Window } from "./stage";
import * as state from "./state";

const STEPS: Record<string, [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
const PAN_PX = 40;

/** Listens for keys; returns what stops it. */
export function keys(element: HTMLElement, view: Window, abandon: () => void): () => void {
  const onPicture = (event: KeyboardEvent): void => {
    if (meantElsewhere(event)) return;
    const step = STEPS[event.key];
    const id = state.chosen.value;
    const many = state.picked.value.length > 0;
    if (step !== undefined) {
      const mm = event.shiftKey ? 1 : 10;
      if (id === undefined && !many) view.pan(-step[0] * PAN_PX, -step[1] * PAN_PX);
      else nudge(step[0] * mm, step[1] * mm);
    } else if (event.key === "[" || event.key === "]") {
      const by = event.key === "]" ? 5 : -5;
      if (many) several.turnBy(by);
      else if (id !== undefined) act.turnBy(id, by);
    } else if (event.key === "Enter" && event.target === element) {
      goInside();
    } else if (event.key === "Delete" || event.key === "Backspace") {
      if (many) several.deed("remove");
      else if (id !== undefined) act.remove([id]);
    } else if (event.key === "+" || event.key === "-" || event.key === "=") {
      view.enlarge(event.key === "-" ? 0.8 : 1.25);
    } else if (event.key === "0") {
      view.refit();
    } else {
      return;
    }
    event.preventDefault();
  };
  const anywhere = (event: KeyboardEvent): void => {
    if (event.key === "Escape") {
      abandon();
      state.putting.value = undefined;
      session.choose(undefined);
      several.leave();
      return;
    }
    const writing = event.target instanceof Element && event.target.matches("input,textarea,select");
    if (writing || !(event.ctrlKey || event.metaKey)) return;
    const key = event.key.toLowerCase();
    if (key === "z" && !event.shiftKey) session.undo();
    else if (key === "y" || (key === "z" && event.shiftKey)) session.redo();
    else if (key === "a" && state.stage.value === "work") several.all();
    else return;
    event.preventDefault();
  };
  element.addEventListener("keydown", onPicture);
  addEventListener("keydown", anywhere);
  return () => {
    element.removeEventListener("keydown", onPicture);
    removeEventListener("keydown", anywhere);
  };
}
