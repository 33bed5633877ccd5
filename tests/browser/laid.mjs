// Whether words have room: nothing cut off, nothing laid over anything else, no
// scrolling sideways and, where it is asked, no word that is not from the table.

/**
 * In the page: what is amiss on the screen as it is. `known` are names that are
 * no words of the table, `units` what else may stand there; where words are
 * `ourOwn` they are not looked at.
 */
export function amiss([known, units, ourOwn]) {
  const faults = [];
  const wide = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth > wide + 1) {
    faults.push(`scrolls sideways: ${document.documentElement.scrollWidth} of ${wide}`);
  }
  const say = document.querySelector(".work .say");
  if (say !== null && say.clientHeight < 150) faults.push(`only ${say.clientHeight} px are left for what is said`);
  for (const bar of document.querySelectorAll(".head, .scores, .row, .places")) {
    if (bar.scrollHeight > bar.clientHeight + 2) {
      faults.push(`${bar.className} spills: ${bar.scrollHeight} px in ${bar.clientHeight}`);
    }
  }
  const told = (element) => {
    const { tagName, className } = element;
    const of = typeof className === "string" && className !== "" ? `.${className}` : "";
    return `${tagName.toLowerCase()}${of} “${element.textContent.trim().slice(0, 40)}”`;
  };
  const seen = (element) => element.checkVisibility({ visibilityProperty: true }) && element.closest(".away") === null;
  const root = document.querySelector("dialog[open]") ?? document.body;
  const escaped = known.map((name) => name.replace(/[^\p{L}\p{N} ]/gu, "\\$&"));
  const names = new RegExp(`(?<![a-z])(${escaped.join("|")})(?![a-z])`, "gi");
  // A thing is mentioned again by its noun.
  const nouns = new Set(known.flatMap((name) => name.match(/[a-z]+/gi) ?? []));
  const words = (text) => {
    const left = text.replace(names, " ").replace(new RegExp(units, "gi"), " ").match(/[a-z]{3,}/gi) ?? [];
    const strange = left.filter((word) => !nouns.has(word));
    return strange.length > 0 && strange;
  };
  const walk = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  for (let node = walk.nextNode(); node !== null; node = walk.nextNode()) {
    const { parentElement: holder, data } = node;
    if (data.trim() === "" || holder === null || holder.matches("script,style,noscript,title,textarea")) continue;
    if (!seen(holder)) continue;
    // What is amiss in a file is told in the words of its format.
    if (!ourOwn && holder.closest(".problems") === null && words(data)) faults.push(`not from the table: ${words(data)} in ${told(holder)}`);
    if (holder.closest("svg,option,.flick,.keeps") !== null) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const box = range.getBoundingClientRect();
    if (box.width === 0) continue;
    if (box.left < -1 || box.right > wide + 1) faults.push(`off the side: ${told(holder)}`);
    const control = holder.closest("button,summary,label,output,.tape");
    const room = control?.getBoundingClientRect();
    if (room && (box.left < room.left - 2 || box.right > room.right + 2 || box.bottom > room.bottom + 3)) {
      faults.push(`spills out of its control: ${told(holder)}`);
    }
    for (let at = holder; at !== null && at !== root; at = at.parentElement) {
      const style = getComputedStyle(at);
      if (style.overflowX === "auto" || style.overflowX === "scroll") break;
      const cuts = style.overflowX === "hidden" || style.overflowX === "clip";
      if (cuts && at.scrollWidth > at.clientWidth + 1) faults.push(`cut off: ${told(at)}`);
    }
  }
  if (!ourOwn) {
    for (const each of root.querySelectorAll("[aria-label],[placeholder],[alt]")) {
      const text = ["aria-label", "placeholder", "alt"].map((name) => each.getAttribute(name) ?? "").join(" ");
      if (words(text)) faults.push(`not from the table: ${words(text)} names ${told(each)}`);
    }
  }
  const controls = [...root.querySelectorAll("button,select,summary,input,textarea,a[href]")].filter(seen);
  const places = controls.map((each) => each.getBoundingClientRect());
  const apart = (one, other) => one.contains(other) || other.contains(one);
  // What scrolls by itself lies over nothing beside it.
  const scrolled = (each) => {
    const own = (at) => at.matches(".say,.places,.row,.head,.looks,dialog,nav") || getComputedStyle(at).overflowY === "auto";
    let at = each.parentElement;
    while (at !== null && !own(at)) at = at.parentElement;
    return at ?? document.body;
  };
  for (let n = 0; n < controls.length; n += 1) {
    for (let m = n + 1; m < controls.length; m += 1) {
      const [a, b] = [places[n], places[m]];
      const over = Math.min(a.right, b.right) - Math.max(a.left, b.left) > 3 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 3;
      const sticky = [controls[n], controls[m]].some((each) => getComputedStyle(each).position === "sticky");
      if (over && !sticky && !apart(controls[n], controls[m]) && scrolled(controls[n]) === scrolled(controls[m])) {
        faults.push(`one over another: ${told(controls[n])}, ${told(controls[m])}`);
      }
    }
  }
  return [...new Set(faults)];
}
