// A photo with a cross-hair over it, put where it is wanted by finger or keys,
// and what lies under it enlarged.

import type { ComponentChildren, JSX, RefObject } from "preact";

import { stepped } from "../crosshair";
import type { Spot } from "../crosshair";

interface Own {
  /** What is done here, and by which keys. */
  name: string;
  /** Whether there is no photo yet. */
  hidden: boolean;
  /** Where the photo is shown, and where it is enlarged. */
  shown: RefObject<HTMLCanvasElement | null>;
  lens: RefObject<HTMLCanvasElement | null>;
  /** Its width and height, px. */
  size: readonly [number, number];
  /** Where the cross-hair is, and what was tapped. */
  at: Spot;
  marks: readonly Spot[];
  look(spot: Spot): void;
  tap(): void;
  /** What lies under the marks. */
  children: ComponentChildren;
}

export function Shot({ name, hidden, shown, lens, size, at, marks, look, tap, children }: Own): JSX.Element {
  const [wide, high] = size;
  const place = (event: PointerEvent): Spot => {
    const box = shown.current?.getBoundingClientRect() ?? new DOMRect(0, 0, 1, 1);
    return [((event.clientX - box.left) * wide) / box.width, ((event.clientY - box.top) * high) / box.height];
  };
  const key = (event: KeyboardEvent): void => {
    const to = stepped(at, event);
    if (to === undefined && event.key !== "Enter") return;
    event.preventDefault();
    event.stopPropagation();
    if (to === undefined) tap();
    else look(to);
  };
  const [x, y] = at;
  const arm = wide / 60;
  return (
    <div
      class="shot"
      hidden={hidden}
      tabIndex={0}
      role="application"
      aria-label={name}
      onKeyDown={key}
      onPointerDown={(event) => look(place(event))}
      onPointerMove={(event) => event.buttons !== 0 && look(place(event))}
      onPointerUp={(event) => {
        look(place(event));
        tap();
      }}
    >
      <canvas ref={shown} width="0" height="0" />
      <svg viewBox={`0 0 ${wide} ${high}`} aria-hidden="true">
        {children}
        {marks.map(([mx, my], n) => (
          <path key={n} class="told" d={`M${mx - arm} ${my}h${2 * arm}M${mx} ${my - arm}v${2 * arm}`} />
        ))}
        <path d={`M${x} 0V${high}M0 ${y}H${wide}`} />
      </svg>
      <div class={`glass${x * 2 < wide ? " right" : ""}`} aria-hidden="true">
        <canvas ref={lens} width="96" height="96" />
      </div>
    </div>
  );
}
