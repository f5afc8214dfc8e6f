import { fileURLToPath, pathToFileURL } from "node:url";
import type { Uri } from "./evaluate/workspace.ts";

/**
 * The one spelling of a file's URI inside the server. Editors write the same file's URI in different ways: `c%3A` or `C:` for a
 * drive, `%28` for a bracket. Schemes other than `file:` stay as they are.
 */
export function normalisedUri(uri: string, windows = process.platform === "win32"): Uri {
  if (!uri.startsWith("file:")) return uri;
  try {
    const { href } = pathToFileURL(fileURLToPath(uri, { windows }), { windows });
    return windows ? href.replace(/^file:\/\/\/[A-Z]:/, (drive) => drive.toLowerCase()) : href;
  } catch {
    // A file URI without a path on this machine; it stays as it is, and has no text on disk.
    return uri;
  }
}
