// What is asked of every screen, whatever is on it. Each returns what is amiss,
// in words that name the control.

/** Least side of what is touched, CSS px: WCAG 2.5.5 asks for 44. */
const TOUCH = 44;

/** What can be touched and is smaller than a fingertip, or stands off the screen's side. */
export const cramped = (page) =>
  page.evaluate((least) => {
    const faults = [];
    const wide = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth > wide) faults.push("the page scrolls sideways");
    const root = document.querySelector("dialog[open]") ?? document.body;
    for (const each of root.querySelectorAll("button, select, summary, input, textarea, a[href]")) {
      // What is folded away has a box too.
      if (!each.checkVisibility() || each.closest(".away") !== null) continue;
      const box = each.getBoundingClientRect();
      if (box.width === 0) continue;
      const label = (each.closest("label") ?? each.labels?.[0])?.getBoundingClientRect();
      const name = each.getAttribute("aria-label") ?? (each.textContent || each.labels?.[0]?.textContent || each.className);
      const high = Math.max(box.height, label?.height ?? 0);
      const across = Math.max(box.width, label?.width ?? 0);
      if (high < least - 0.5 || across < least - 0.5) faults.push(`${name}: ${across} × ${high}`);
      // These are flicked along.
      if (each.closest(".flick, .keeps") !== null) continue;
      const side = each.closest(".say")?.getBoundingClientRect();
      const [from, to] = side === undefined ? [0, wide] : [side.left, side.right];
      if (box.left < from - 1 || box.right > to + 1) faults.push(`${name}: off the side`);
    }
    return faults;
  }, TOUCH);

/** What can have focus and is nothing, or has no name, to who hears the page. */
export async function unspoken(page) {
  const session = await page.context().newCDPSession(page);
  const { nodes } = await session.send("Accessibility.getFullAXTree");
  const faults = [];
  for (const { ignored, role, name, properties = [], backendDOMNodeId } of nodes) {
    const focusable = properties.some((each) => each.name === "focusable" && each.value.value === true);
    if (ignored || !focusable) continue;
    const of = role?.value ?? "";
    const nothing = ["", "generic", "none"].includes(of);
    if (!nothing && (name?.value ?? "").trim() !== "") continue;
    const { node } = await session.send("DOM.describeNode", { backendNodeId: backendDOMNodeId });
    faults.push(`${nothing ? "no role" : `${of} without a name`}: ${node.localName} ${(node.attributes ?? []).join(" ")}`);
  }
  await session.detach();
  return faults;
}

/** In the page: what is told from anything else by its hue alone. */
function byHue([attributes, focused]) {
  const parsed = (text) => {
    const numbers = text.match(/-?[\d.]+(e-?\d+)?/g)?.map(Number) ?? [0, 0, 0, 0];
    const by = text.startsWith("color(") ? 255 : 1;
    return [...numbers.slice(0, 3).map((each) => each * by), numbers[3] ?? 1];
  };
  const over = ([r, g, b, share], ground) => [r, g, b].map((each, n) => each * share + ground[n] * (1 - share));
  const ground = (of) => {
    const sheets = [];
    for (let at = of; at !== null; at = at.parentElement) {
      const colour = parsed(getComputedStyle(at).backgroundColor);
      sheets.unshift(colour);
      if (colour[3] === 1) break;
    }
    return sheets.reduce((below, each) => over(each, below), [255, 255, 255]);
  };
  const light = (colour) => {
    const [r, g, b] = colour.map((each) => {
      const share = each / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (one, other) => {
    const [low, high] = [light(one), light(other)].sort((a, b) => a - b);
    return (high + 0.05) / (low + 0.05);
  };
  const seen = (colour, on) => contrast(over(parsed(colour), on), on) >= 3;
  const named = (control) => control.getAttribute("aria-label") ?? (control.textContent.trim().slice(0, 60) || control.className);

  /** The lines, weights and signs a control is drawn with. */
  const shape = (control) => {
    const found = [];
    for (const each of [control, ...control.querySelectorAll("*:not(svg *)")]) {
      const style = getComputedStyle(each);
      const on = ground(each);
      const around = ground(each.parentElement ?? each);
      found.push(style.fontWeight, style.fontStyle);
      if (style.textDecorationLine !== "none" && seen(style.textDecorationColor, on)) {
        found.push(style.textDecorationLine, style.textDecorationStyle, style.textDecorationThickness);
      }
      for (const side of ["Top", "Right", "Bottom", "Left"]) {
        const [kind, width] = [style[`border${side}Style`], style[`border${side}Width`]];
        const drawn = kind !== "none" && width !== "0px" && seen(style[`border${side}Color`], around);
        found.push(drawn ? `${side} ${kind} ${width}` : "");
      }
      const ring = style.outlineStyle !== "none" && seen(style.outlineColor, around);
      found.push(ring ? `${style.outlineStyle} ${style.outlineWidth}` : "");
      const [, colour, line] = /^(\w+\(.*?\)) (.*)$/.exec(style.boxShadow) ?? [];
      if (colour !== undefined && seen(colour, on)) found.push(line);
      for (const part of ["::before", "::after"]) found.push(getComputedStyle(each, part).content);
    }
    return found.join("|");
  };
  /** What only what is in that state is drawn with. */
  const signs = (control) => {
    const drawn = [...control.querySelectorAll("svg")].filter((each) => each.checkVisibility());
    const text = control.textContent.trim();
    return `${drawn.length} ${/\p{L}|\p{N}/u.test(text) ? "" : text}`;
  };
  const faults = [];
  for (const [name, off] of attributes) {
    const stands = (each) => each.hasAttribute(name) && each.getAttribute(name) !== "false";
    for (const control of document.querySelectorAll(`:is(button, a, summary)[${name}]`)) {
      if (!stands(control) || !control.checkVisibility()) continue;
      const was = control.getAttribute(name);
      const look = () => [shape(control), ground(control), getComputedStyle(control).color];
      const [drawn, on, ink] = look();
      if (off === null) control.removeAttribute(name);
      else control.setAttribute(name, off);
      const [otherwise, below, other] = look();
      control.setAttribute(name, was);
      if (drawn !== otherwise || contrast(on, below) >= 3) continue;
      const among = control.closest("ul, ol, nav, .steps, .field, section, main") ?? document;
      const alike = [...among.querySelectorAll(control.localName)].filter(
        (each) => each !== control && !stands(each) && each.className === control.className);
      if (alike.length > 0 && alike.every((each) => signs(each) !== signs(control))) continue;
      // What opens something is told by what it opened, where nothing is told by colour.
      if (name === "aria-expanded" && ink === other && String(on) === String(below)) continue;
      faults.push(`${named(control)}: ${name} is told by hue alone`);
    }
  }
  for (const control of focused === "" ? [] : document.querySelectorAll(focused)) {
    if (!control.checkVisibility() || control.closest(".away") !== null) continue;
    const { outlineStyle, outlineWidth, outlineColor, outlineOffset, clipPath } = getComputedStyle(control);
    const [wide, off] = [Number.parseFloat(outlineWidth), Number.parseFloat(outlineOffset)];
    if (outlineStyle === "none" || wide < 2) faults.push(`${named(control)}: focus is not shown`);
    else if (clipPath !== "none" && off + wide > 0) faults.push(`${named(control)}: the ring of focus is cut off`);
    else if (control.matches(".picture")) {
      // A ring round what is drawn lies upon the drawing, of any colour: of two
      // lines that part by 9:1 one parts from it by 3:1 (WCAG technique C40).
      const { borderTopColor, borderTopWidth, content } = getComputedStyle(control, "::after");
      const two = contrast(over(parsed(outlineColor), [0, 0, 0]), over(parsed(borderTopColor), [0, 0, 0])) >= 9;
      if (content === "none" || Number.parseFloat(borderTopWidth) < 2 || !two) {
        faults.push(`${named(control)}: the ring of focus does not stand out from every colour`);
      }
    } else if (!seen(outlineColor, ground(off < 0 ? control : control.parentElement))) {
      faults.push(`${named(control)}: the ring of focus does not stand out`);
    }
  }
  return faults;
}

/** States of a control, and what says that it is not in them. */
const STATES = [["aria-pressed", "false"], ["aria-current", null], ["aria-expanded", "false"], ["aria-selected", "false"]];

/**
 * What is pressed, current or open and differs from how it would look otherwise
 * in its hue alone: not in a line, a weight, a sign or a ground that stands out
 * by 3:1.
 */
export const hueAlone = (page) => page.evaluate(byHue, [STATES, ""]);

const FOCUSABLE = "button:enabled, select:enabled, summary, input:enabled, textarea:enabled, a[href], [tabindex='0']";

/** What would have focus by key and show it by no ring, or by one that does not stand out by 3:1. */
export async function ringless(page) {
  // What came or went meanwhile is asked again.
  for (let again = 2; again > 0; again -= 1) {
    const faults = await ringed(page).catch((error) => [error.message]);
    if (faults.length === 0) return faults;
  }
  return ringed(page);
}

async function ringed(page) {
  const session = await page.context().newCDPSession(page);
  try {
    await session.send("DOM.enable");
    await session.send("CSS.enable");
    const { root } = await session.send("DOM.getDocument", { depth: 0 });
    const { nodeIds } = await session.send("DOM.querySelectorAll", { nodeId: root.nodeId, selector: FOCUSABLE });
    // Put on by the debugger: nothing is told that it has focus, and nothing changes by it.
    const forcedPseudoClasses = ["focus", "focus-visible"];
    await Promise.all(nodeIds.map((nodeId) => session.send("CSS.forcePseudoState", { nodeId, forcedPseudoClasses })));
    return await page.evaluate(byHue, [[], FOCUSABLE]);
  } finally {
    await session.detach();
  }
}
