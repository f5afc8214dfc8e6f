import { crc32 } from "node:zlib";

/**
 * A PNG with a note of its maker and its resolution (PNG, third edition, sections 11.3.3.2 and 11.3.4.3), placed after its
 * header, where both belong.
 */
export function withChunks(
  png: Uint8Array,
  { software, dpi }: { readonly software: string; readonly dpi: number },
): Buffer {
  const perMetre = Math.round(dpi / 0.0254);
  const physical = Buffer.alloc(9);
  physical.writeUInt32BE(perMetre, 0);
  physical.writeUInt32BE(perMetre, 4);
  // The unit is the metre.
  physical[8] = 1;
  return Buffer.concat([
    png.subarray(0, headerBytes),
    chunk("pHYs", physical),
    chunk("tEXt", Buffer.from(`Software\0${software}`, "latin1")),
    png.subarray(headerBytes),
  ]);
}

/** A PNG with one more text chunk, before its last chunk, IEND. */
export function chunkBefore(png: Buffer, text: string): Buffer {
  const end = png.length - lastBytes;
  return Buffer.concat([png.subarray(0, end), chunk("tEXt", Buffer.from(text, "latin1")), png.subarray(end)]);
}

/** The PNG without such a chunk, found by the beginning of its text; undefined if there is none before the last chunk. */
export function withoutChunk(png: Buffer, beginning: string): Buffer | undefined {
  const at = png.lastIndexOf(Buffer.from(`tEXt${beginning}`, "latin1")) - 4;
  if (at < 0) return undefined;
  const length = png.readUInt32BE(at);
  if (at + 12 + length !== png.length - lastBytes) return undefined;
  return Buffer.concat([png.subarray(0, at), png.subarray(png.length - lastBytes)]);
}

/** The chunk IEND: length, type, checksum. */
const lastBytes = 4 + 4 + 4;

/** The signature, and the chunk IHDR: length, type, 13 bytes, checksum. */
const headerBytes = 8 + 4 + 4 + 13 + 4;

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(data.length, 0);
  body.copy(framed, 4);
  framed.writeUInt32BE(crc32(body), body.length + 4);
  return framed;
}
