// Focus that is not lost: when what has it leaves the page or can be pressed no
// more, it passes to what came in its place, or to what is nearest.

/** What takes it; a field of text would bring up a phone's keyboard. */
const CAN =
  'button:enabled,select:enabled,summary,input[type="checkbox"]:enabled,[tabindex="0"]';

/** What had it last and all it lay in, each with its place among its neighbours. */
let path: readonly (readonly [Element, number])[] = [];
/** What was pressed last to leave the whole page for another: coming back, it has it again. */
let left = "";
let byKey = false;
/** Whether what was done last was done by key. */
export const keyed = (): boolean => byKey;

const called = (of: Element): string => of.getAttribute("aria-label") ?? of.textContent;
const usable = (of: Element): boolean =>
  of.isConnected && of.checkVisibility() && !of.matches(":disabled");

function remember(of: Element): void {
  const found: [Element, number][] = [];
  for (let at: Element | null = of; at !== null; at = at.parentElement) {
    found.push([at, [...(at.parentElement?.children ?? [])].indexOf(at)]);
  }
  path = found;
}

/** Where focus goes within `around`, of which the child at `place` held `last`. */
function next(around: Element, place: number, last: Element, whole: boolean): HTMLElement | undefined {
  const all = [...around.querySelectorAll<HTMLElement>(CAN)].filter(usable);
  const child = around.children[place];
  const from = (each: Element): boolean =>
    child !== undefined &&
    (child.contains(each) || (child.compareDocumentPosition(each) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0);
  const again = whole ? left : called(last);
  if (whole) left = called(last);
  return all.find((each) => called(each) === again) ?? all.find(from) ?? all.at(-1);
}

function pass(root: Element): void {
  const [last] = path[0] ?? [];
  const has = document.activeElement;
  if (last === undefined || (has !== last && has !== document.body)) return;
  if (usable(last)) {
    // What opened above it may have pushed it out of sight.
    if (byKey && has === last) last.scrollIntoView({ block: "nearest" });
    return;
  }
  for (const [n, [around]] of path.entries()) {
    const to = usable(around) ? next(around, path[n - 1]?.[1] ?? 0, last, around === root) : undefined;
    if (to !== undefined) return to.focus({ preventScroll: !byKey });
  }
}

/** Watches over focus within `root`. */
export function watch(root: Element): void {
  root.addEventListener("focusin", (event) => remember(event.target as Element));
  addEventListener("keydown", () => (byKey = true), true);
  addEventListener("pointerdown", () => (byKey = false), true);
  new MutationObserver(() => pass(root)).observe(root, {
    childList: true, subtree: true, attributes: true, attributeFilter: ["disabled", "hidden"],
  });
}
