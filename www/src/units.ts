// Lengths and masses in the units of the open layout, as the core writes them.

import { core } from "./session";
import * as state from "./state";

/** The core, asked anew by whatever is drawn when the open layout changes. */
const open = (): ReturnType<typeof core> => {
  void state.layout.value;
  return core();
};

export const length = (mm: number): string => open().length(mm);
export const mass = (grams: number): string => open().mass(grams);
