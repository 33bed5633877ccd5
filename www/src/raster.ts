// The exported drawing as a file, and as a picture of pixels for a chat.

import * as say from "#words";

/** Longest side of the picture for a chat, px. */
const LONGEST = 2400;

export function pictureFile(svg: string): Blob {
  return new Blob([svg], { type: "image/svg+xml" });
}

/** The device has no room for a picture of so many pixels. */
export class NoRoom extends Error {}

/** Something to draw on, of these pixels. */
function blank(width: number, height: number): [HTMLCanvasElement, CanvasRenderingContext2D] {
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext("2d");
  if (context === null) throw new Error(say.noCanvas);
  if (!holds(context, width - 1, height - 1)) throw new NoRoom();
  return [canvas, context];
}

/** Whether a stroke is kept: a browser without room takes all and keeps none. */
function holds(context: CanvasRenderingContext2D, x: number, y: number): boolean {
  try {
    context.fillRect(x, y, 1, 1);
    const kept = context.getImageData(x, y, 1, 1).data[3] !== 0;
    context.clearRect(x, y, 1, 1);
    return kept;
  } catch {
    return false;
  }
}

/** Draws an SVG file into pixels: so many, or as many as suit a chat. */
export async function rasterised(svg: string, pixels?: readonly [number, number]): Promise<Blob> {
  const address = URL.createObjectURL(pictureFile(svg));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const by = LONGEST / Math.max(image.naturalWidth, image.naturalHeight);
    const [width, height] = pixels ?? [
      Math.round(image.naturalWidth * by),
      Math.round(image.naturalHeight * by),
    ];
    const [canvas, context] = blank(width, height);
    context.drawImage(image, 0, 0, width, height);
    return await new Promise((resolve, reject) =>
      canvas.toBlob(
        (blob) => (blob === null ? reject(new Error(say.noPicture)) : resolve(blob)),
        "image/png",
      ),
    );
  } finally {
    URL.revokeObjectURL(address);
  }
}
