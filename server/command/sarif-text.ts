import { isAbsolute } from "node:path";
import { pathToFileURL } from "node:url";
import { printable } from "./terminal.ts";

/**
 * A plain text message of SARIF 2.1.0 (section 3.11). Braces would be placeholders for arguments, so they are doubled (3.11.5).
 * `[…](…)` would be a link, perhaps to a place chosen by a stranger's plan, so the two halves are separated (3.11.6).
 */
export function sarifText(text: string): string {
  return printable(text).replaceAll("{", "{{").replaceAll("}", "}}").replaceAll("](", "] (");
}

/**
 * A file's name, relative and with forward slashes, as a URI reference. Each part of the path is percent-encoded: no character of
 * a name can begin a scheme, a query or a fragment. A file on another drive has no relative name: then the reference is absolute.
 */
export function fileReference(file: string): { readonly uri: string; readonly uriBaseId?: string } {
  if (isAbsolute(file)) return { uri: pathToFileURL(file).href };
  return { uri: file.split("/").map(encodedName).join("/"), uriBaseId: sourceRoot };
}

/** The log's name for the folder that its files are relative to. */
export const sourceRoot = "%SRCROOT%";

/** A path allows every character that `encodeURIComponent` leaves; half a surrogate pair cannot be encoded at all. */
function encodedName(name: string): string {
  return encodeURIComponent(Buffer.from(name).toString());
}
