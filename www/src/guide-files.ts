// Mask guides as files in one archive, made in the worker: rows of the core
// through the browser's own deflate into PNGs, those into a zip. No picture is
// ever whole: beside the core there are as many rows as are asked for at once,
// and the packed files.

import { Zip, ZipPassThrough } from "fflate";
import encode from "png-chunks-encode";

import type { Planner } from "#core";

import type { GuideAnswer, Wanted } from "./asked";

/** Pixels asked for at once. */
const AT_ONCE = 1 << 20;
const HEADER = 13;

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

/** What a PNG begins with: its size, 8 bits of grey, nothing interlaced. */
function header([wide, high]: [number, number]): Uint8Array {
  const data = new DataView(new ArrayBuffer(HEADER));
  data.setUint32(0, wide);
  data.setUint32(4, high);
  data.setUint8(8, 8);
  return new Uint8Array(data.buffer);
}

/** The guide of one exposure as a PNG; `at` hears which share is done. */
async function picture(
  planner: Planner,
  exposure: number,
  pixels: [number, number],
  at: (share: number) => void,
): Promise<Uint8Array> {
  const [wide, high] = pixels;
  const rows = planner.guide(exposure);
  const deflate = new CompressionStream("deflate");
  const packed = new Response(deflate.readable).arrayBuffer();
  const into = deflate.writable.getWriter();
  const count = Math.max(1, Math.floor(AT_ONCE / wide));
  for (let y = 0; rows !== undefined && y < high; y += count) {
    await into.write(rows.next(count) as Uint8Array<ArrayBuffer>);
    at(Math.min(1, (y + count) / high));
  }
  await into.close();
  rows?.free();
  return encode([
    { name: "IHDR", data: header(pixels) },
    { name: "IDAT", data: new Uint8Array(await packed) },
    { name: "IEND", data: new Uint8Array() },
  ]);
}

/** Makes all guides of the open layout, and the sheet that goes with them. */
export async function make(planner: Planner, tell: (answer: GuideAnswer) => void): Promise<void> {
  const { files, pixels, sheet } = planner.guides() as Wanted;
  const parts: Uint8Array<ArrayBuffer>[] = [];
  const zip = new Zip((fault, part) => {
    if (fault !== null) throw fault;
    parts.push(part as Uint8Array<ArrayBuffer>);
  });
  const put = (name: string, data: Uint8Array): void => {
    const file = new ZipPassThrough(name);
    zip.add(file);
    file.push(data, true);
  };
  put(sheet, bytes(planner.guide_sheet() ?? ""));
  for (const [n, { exposure, name }] of files.entries()) {
    const at = (share: number): void =>
      tell({ tell: "guides", done: (n + share) / files.length });
    put(name, await picture(planner, exposure, pixels, at));
  }
  zip.end();
  tell({ tell: "guides", done: 1, zip: new Blob(parts, { type: "application/zip" }) });
}
