// Small drawings one chooses by, made when they come into sight.

import type { JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";

import * as session from "../session";

/** How far from the edge of the screen a drawing is made, px. */
const NEAR = "120px";

/** A drawing of what `of` names, by one of the core's ways to draw. */
export function Small(props: {
  of: string;
  draw: (core: ReturnType<typeof session.core>, root: SVGSVGElement, of: string) => unknown;
  shape?: string;
}): JSX.Element {
  const root = useRef<SVGSVGElement>(null);
  useEffect(() => {
    const svg = root.current;
    if (svg === null || props.of === "") return undefined;
    const watch = new IntersectionObserver(
      ([seen]) => {
        if (!seen?.isIntersecting) return;
        watch.disconnect();
        try {
          props.draw(session.core(), svg, props.of);
        } catch {
          // What cannot be read has no drawing; it says why when it is taken.
        }
      },
      { rootMargin: NEAR },
    );
    watch.observe(svg);
    return () => watch.disconnect();
  }, [props.of]);
  return <svg class={props.shape ?? "small"} ref={root} aria-hidden="true" />;
}

export function Surface({ prop }: { prop: string }): JSX.Element {
  return <Small of={prop} draw={(core, svg, of) => core.draw_swatch(svg, of)} />;
}
