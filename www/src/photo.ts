// A photo from a file into pixels of a size a phone can hold. It is read here
// and goes nowhere else.

import { Planner } from "#core";
import * as say from "#words";

/** Longest side a photo is read at, px. */
const LONGEST = 2048;
/** Pixels of a photo, millions: more, unpacked, would push the page out of a phone's memory. */
const MILLIONS = 64;
/** How much of a file is searched for how its colours are written. */
const HEAD = 256 * 1024;

/** Draws a photo, upright, into `canvas`, sized to it. Throws what is wrong, in words. */
export async function drawPhoto(file: File, canvas: HTMLCanvasElement): Promise<void> {
  if (file.size === 0) throw new Error(say.photoEmpty({ file: file.name }));
  const head = new Uint8Array(await file.slice(0, HEAD).arrayBuffer());
  if (Planner.in_inks(head)) throw new Error(say.photoPrint({ file: file.name }));
  const [width, height] = await extent(file);
  const count = Math.ceil((width * height) / 1e6);
  if (count > MILLIONS) {
    throw new Error(say.photoHuge({ file: file.name, found: String(count), most: String(MILLIONS) }));
  }
  const by = Math.min(1, LONGEST / Math.max(width, height));
  const size = { resizeWidth: Math.round(width * by) || 1, resizeHeight: Math.round(height * by) || 1 };
  const bitmap = await createImageBitmap(file, {
    ...size,
    imageOrientation: "from-image",
    resizeQuality: "high",
  }).catch(() => {
    throw new Error(say.photoUnreadable({ file: file.name }));
  });
  try {
    [canvas.width, canvas.height] = [bitmap.width, bitmap.height];
    const context = canvas.getContext("2d", { willReadFrequently: true });
    if (context === null) throw new Error(say.noCanvas);
    context.drawImage(bitmap, 0, 0);
  } finally {
    bitmap.close();
  }
}

/** Width and height of a picture as it is looked at, from its head alone. */
async function extent(file: File): Promise<[number, number]> {
  const address = URL.createObjectURL(file);
  const image = new Image();
  try {
    await new Promise((resolve, reject) => {
      [image.onload, image.onerror] = [resolve, reject];
      image.src = address;
    });
    return [image.naturalWidth, image.naturalHeight];
  } catch {
    throw new Error(say.photoUnreadable({ file: file.name }));
  } finally {
    image.src = "";
    URL.revokeObjectURL(address);
  }
}

/** A square of pixels about a place, as far as the photo reaches. */
export function square(canvas: HTMLCanvasElement, [x, y]: [number, number], side: number): ImageData {
  const [left, top] = [x, y].map((c) => Math.max(0, Math.round(c - side / 2))) as [number, number];
  const wide = Math.max(1, Math.min(side, canvas.width - left));
  const high = Math.max(1, Math.min(side, canvas.height - top));
  const context = canvas.getContext("2d", { willReadFrequently: true });
  if (context === null) throw new Error(say.noCanvas);
  return context.getImageData(left, top, wide, high);
}
