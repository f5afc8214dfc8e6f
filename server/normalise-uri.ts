import { fileURLToPath, pathToFileURL } from "node:url";
import type { Uri } from "./evaluate/workspace.ts";

/**
 * The one spelling by which a file goes inside the server. Editors write the same file's URI in different ways: `c%3A` or `C:`
 * for a drive, `%28` for a bracket. Other schemes than `file:` stay as they are.
 */
export function normalisedUri(uri: string, windows = process.platform === "win32"): Uri {
  if (!uri.startsWith("file:")) return uri;
  try {
    const { href } = pathToFileURL(fileURLToPath(uri, { windows }), { windows });
    return windows ? href.replace(/^file:\/\/\/[A-Z]:/, (drive) => drive.toLowerCase()) : href;
  } catch {
    // A file URI that names no path of this machine; it stays as it is, and simply has no text on disk.
    return uri;
  }
}
