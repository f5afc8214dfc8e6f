import { fileURLToPath } from "node:url";
import type { Uri } from "../workspace.ts";

/** A file's name as its owner knows it. An untitled document, and a name with invalid encoding, stay as they are. */
export function fileName(uri: Uri): string {
  const last = uri.slice(uri.lastIndexOf("/") + 1);
  try {
    return decodeURIComponent(last);
  } catch {
    return last;
  }
}

/** The path of a file, for display. Characters that are not UTF-8 stay percent-encoded. */
export function pathInWords(uri: Uri): string {
  try {
    return fileURLToPath(uri);
  } catch {
    const { pathname } = new URL(uri);
    return pathname.replace(/(?:%[0-9A-F]{2})+/gi, (escaped) => {
      try {
        return decodeURIComponent(escaped);
      } catch {
        return escaped;
      }
    });
  }
}

/** The URI of a file with a path that is not UTF-8. */
export function uriOfBytes(path: Uint8Array): Uri {
  const written = [...path].map((byte) => {
    const character = String.fromCharCode(byte);
    return /[\w./~-]/.test(character) ? character : `%${byte.toString(16).toUpperCase().padStart(2, "0")}`;
  });
  return `file://${written.join("")}`;
}
