// What the whole frame and each crop of it keep, as pictures.

import type { JSX } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";
import * as say from "#words";

import type { Crop, Layout } from "../core";
import * as session from "../session";
import { useDrawn } from "./drawn";

/** The whole frame, with the `lines` of its crops or without. */
export function Whole({ layout, lines = false }: { layout: Layout; lines?: boolean }): JSX.Element {
  const root = useRef<SVGSVGElement>(null);
  // At once: it is what a client came for, or on paper before the next frame.
  useLayoutEffect(() => {
    if (root.current !== null) session.core().draw_crop(root.current, 0, lines);
  }, [layout]);
  return <svg ref={root} role="img" aria-label={say.cropKeeps({ crop: say.clientWhole })} />;
}

/** What one crop keeps. */
export function Kept({ layout, crop }: { layout: Layout; crop: Crop }): JSX.Element {
  const root = useRef<SVGSVGElement>(null);
  useDrawn(root, (svg) => session.core().draw_crop(svg, crop.id, false), [layout, crop.id]);
  // In the shape it will have, so that nothing moves when it is drawn.
  const [wide, high] = crop.ratio ?? crop.print ?? [1, 1];
  return (
    <svg ref={root} viewBox={`0 0 ${wide} ${high}`} role="img" aria-label={say.cropKeeps({ crop: crop.name })} />
  );
}
