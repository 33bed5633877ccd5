// The papers a table is printed on.

/** Each by its name. */
export const PAPERS = [
  "Layout for approval",
  "Set sheet",
  "Shot list",
  "Prop pull list",
  "Food list",
  "Running order",
  "Exposure log",
  "Insurance and after the strike",
  "Hand model release",
];
