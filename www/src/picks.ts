// What is picked often: things added last, and favourites, kept on this device.

import { signal } from "@preact/signals";
import * as say from "#words";

import { message } from "./session";
import * as state from "./state";

/** How many things added last are offered again. */
const MOST = 12;
const NAMES = { recent: "overspread-recent", favourites: "overspread-favourites" } as const;

/** Ids of the catalogue as they were kept; none where nothing sound was. */
function read(name: string): string[] {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(name) ?? "[]");
    return Array.isArray(value) ? value.filter((each) => typeof each === "string") : [];
  } catch {
    // A browser that forbids it, or what another hand wrote there.
    return [];
  }
}

/** Things added last, the last first. */
export const recent = signal(read(NAMES.recent));
export const favourites = signal(read(NAMES.favourites));

export function added(prop: string): void {
  recent.value = [prop, ...recent.value.filter((each) => each !== prop)].slice(0, MOST);
  try {
    localStorage.setItem(NAMES.recent, JSON.stringify(recent.value));
  } catch {
    // Nobody asked for it to be kept; it lasts until the page is closed.
  }
}

/** Makes a thing a favourite, or no longer. */
export function star(prop: string): void {
  const others = favourites.value.filter((each) => each !== prop);
  favourites.value = others.length < favourites.value.length ? others : [...others, prop];
  try {
    localStorage.setItem(NAMES.favourites, JSON.stringify(favourites.value));
  } catch (error) {
    state.fault.value = say.favouriteLost({ why: message(error) });
  }
}
