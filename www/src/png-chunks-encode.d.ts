// The package has no types of its own.

declare module "png-chunks-encode" {
  /** A PNG file of these chunks, each with its length and check sum. */
  export default function encode(chunks: { name: string; data: Uint8Array }[]): Uint8Array<ArrayBuffer>;
}
