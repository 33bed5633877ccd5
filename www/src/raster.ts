// The exported drawing as a file, and as a picture of pixels for a chat.

import * as say from "#words";

/** Longest side of the picture for a chat, px. */
const LONGEST = 2400;

export function pictureFile(svg: string): Blob {
  return new Blob([svg], { type: "image/svg+xml" });
}

/** Draws an SVG file into pixels. */
export async function rasterised(svg: string): Promise<Blob> {
  const address = URL.createObjectURL(pictureFile(svg));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const by = LONGEST / Math.max(image.naturalWidth, image.naturalHeight);
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(image.naturalWidth * by);
    canvas.height = Math.round(image.naturalHeight * by);
    const context = canvas.getContext("2d");
    if (context === null) throw new Error(say.noCanvas);
    context.drawImage(image, 0, 0, canvas.width, canvas.height);
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
