// Which visit to which field is going on: what is changed in one until it is left
// is one step.

let visit = 0;
let field: Element | null = null;

function visited(event: Event): void {
  const at = event.target instanceof Element ? event.target : undefined;
  const to = at?.closest(".field") ?? at?.closest(".line") ?? null;
  if (to === field) return;
  field = to;
  visit += 1;
}
// Not every browser gives a button focus when it is pressed.
for (const kind of ["pointerdown", "focusin"]) addEventListener(kind, visited, true);

/** The number of the visit; 0 outside all fields. */
export const now = (): number => (field === null ? 0 : visit);
