// Small drawings one chooses by.

import type { JSX } from "preact";
import { useRef } from "preact/hooks";

import * as session from "../session";
import { useDrawn } from "./drawn";

/** A drawing of what `of` names, by one of the core's ways to draw. */
export function Small(props: {
  of: string;
  draw: (core: ReturnType<typeof session.core>, root: SVGSVGElement, of: string) => unknown;
  shape?: string;
}): JSX.Element {
  const root = useRef<SVGSVGElement>(null);
  const draw = (svg: SVGSVGElement): void => {
    if (props.of === "") return;
    try {
      props.draw(session.core(), svg, props.of);
    } catch {
      // What cannot be read has no drawing; it says why when it is taken.
    }
  };
  useDrawn(root, draw, [props.of]);
  return <svg class={props.shape ?? "small"} ref={root} aria-hidden="true" />;
}

export function Surface({ prop }: { prop: string }): JSX.Element {
  return <Small of={prop} draw={(core, svg, of) => core.draw_swatch(svg, of)} />;
}
