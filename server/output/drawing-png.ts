import { readFile } from "node:fs/promises";
import { promisify } from "node:util";
import { brotliDecompress } from "node:zlib";
import { initWasm, Resvg } from "@resvg/resvg-wasm";
import { version } from "../../library/package.json";
import type { SvgPicture } from "./draw-svg.ts";
import { typeface } from "./fonts.ts";
import { newPdf, type Paper } from "./pdf-file.ts";
import { withChunks } from "./png-chunks.ts";

/**
 * A drawing for paper as PNG on white, the same bytes on every machine. `scale` is pixels per pixel of the SVG: 2 for a sharp
 * print. A drawing with more than {@link mostPixels} is scaled down to that limit.
 */
export async function drawingPng(picture: SvgPicture, { scale }: { readonly scale: number }): Promise<Paper> {
  const [{ regular, bold }, { drawable, missing }] = await Promise.all([typeface(), newPdf(""), started()]);
  const fitting = Math.min(scale, Math.sqrt(mostPixels / (picture.widthPx * picture.heightPx)));
  const resvg = new Resvg(drawable(picture.svg), {
    fitTo: { mode: "zoom", value: fitting },
    background: "white",
    font: {
      fontBuffers: [regular, bold],
      defaultFontFamily: family,
      sansSerifFamily: family,
    },
  });
  try {
    const image = resvg.render();
    try {
      const software = `Loomwright ${version}`;
      return { bytes: withChunks(image.asPng(), { software, dpi: 96 * fitting }), missing: [...missing] };
    } finally {
      image.free();
    }
  } finally {
    resvg.free();
  }
}

/** It needs a quarter of a gigabyte during drawing. */
export const mostPixels = 64_000_000;

const family = "DejaVu Sans";

/** The library may be started once in a process, and throws an error the second time. */
function started(): Promise<void> {
  engine.started ??= program().then((wasm) => initWasm(wasm));
  return engine.started;
}

/** Compressed (`.br`) in the extension. */
async function program(): Promise<Buffer> {
  const file = (name: string) => readFile(new URL(`../dist/${name}`, import.meta.url));
  try {
    return await file("resvg.wasm");
  } catch {
    return promisify(brotliDecompress)(await file("resvg.wasm.br"));
  }
}

const engine: { started?: Promise<void> } = {};
