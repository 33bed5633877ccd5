// Lines drawn by hand: the rule under the picture, the stroke under the current
// place, and the sample that leads a finding: the very line it draws.

import type { JSX } from "preact";

export function Rule(): JSX.Element {
  return (
    <svg class="ruled" viewBox="0 0 390 6" preserveAspectRatio="none" aria-hidden="true">
      <path d="M0 3.2 C60 2 110 4.4 180 3 S310 2.2 390 3.4" />
    </svg>
  );
}

export function Grease(): JSX.Element {
  return (
    <svg class="grease" viewBox="0 0 60 7" preserveAspectRatio="none" aria-hidden="true">
      <path d="M0 4.4 C9 2.6 16 5.4 26 3.8 S48 2.6 60 3.6" />
    </svg>
  );
}

const SAMPLES: Record<string, JSX.Element> = {
  separation: (
    <g class="stitch">
      <path d="M0 7 C8 5 20 5 30 7" />
      <path d="M3 3v8M8.5 2v8M14 1.6v8M19.5 1.8v8M25 2.6v8" />
    </g>
  ),
  spacing: <path d="M4 1v12M26 1v12M7 7h2M12 7h2M17 7h2M22 7h2" />,
  balance: <path d="M1 10C10 4 18 4 27 6M22 2l5.4 4-5 4.6" />,
  triangles: <path d="M3 12L27 10 14 1.5z" />,
  hero: <ellipse cx="15" cy="7" rx="10" ry="6.2" />,
  space: <path d="M1 1h28v12H1zM4 12L14 2M12 12L22 2M20 12l8-9" stroke-dasharray="2 1.6" />,
  direction: <path d="M1 7h24M19 2l7 5-7 5" />,
  crops: <path d="M0 7h10M13.5 7h10M27 7h3" stroke-width="2.6" />,
  fit: <path d="M0 13h30M3 12L13 1M10 12L20 1M17 12L27 1" />,
  hands: <path d="M0 3L22 5M0 12L22 10M22 4.6c4 0 6 1.4 6 3s-2 3-6 3zM18 4.8v5.4" />,
  light: <path d="M2 8h.1M8 7h.1M14 6.4h.1M20 6.6h.1M26 8h.1" stroke-width="3.4" stroke-linecap="round" />,
  glare: <path d="M8 12L18 1M13 13L23 2" stroke-width="2.4" />,
  lean: <path d="M6 13L15 1M15 1l1 5M15 1l-4.4 2.4M15 13h12" />,
  rig: <path d="M4 13V2h22M26 2v5M1 13h8" />,
  exposures: <path d="M1 4h13v9H1zM10 1h18v9H16" stroke-dasharray="3.2 2.2" />,
  colour: <path class="full" d="M1 3h7v8H1zM11.500 3h7v8h-7zM22 3h7v8h-7z" />,
  timing: <path d="M1 7h28M5 3v8M15 3v8M25 3v8" />,
};
const ALIASES: Record<string, string> = {
  "negative-space": "space",
  copy: "space",
  "copy-space": "space",
  triangle: "triangles",
  crop: "crops",
  hand: "hands",
  exposure: "exposures",
};

/** The line a reading draws on the picture, as a sample beside its sentence. */
export function Sample({ reading }: { reading: string }): JSX.Element {
  const name = reading.toLowerCase().replace(/ /g, "-");
  return (
    <svg class="sample" viewBox="0 0 30 14" aria-hidden="true">
      {SAMPLES[ALIASES[name] ?? name] ?? <path d="M0 7C8 5 20 9 30 7" />}
    </svg>
  );
}
