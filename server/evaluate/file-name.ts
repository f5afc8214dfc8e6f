import type { Uri } from "./workspace.ts";

/** A file's name as its owner knows it. An untitled document, and a name that is written wrongly, stay as they are. */
export function fileName(uri: Uri): string {
  const last = uri.slice(uri.lastIndexOf("/") + 1);
  try {
    return decodeURIComponent(last);
  } catch {
    return last;
  }
}
