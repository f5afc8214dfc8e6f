import { harmlessText } from "../../model/display-name.ts";

/** Text for use between tags and in a double-quoted attribute of XML. Characters that XML cannot hold become spaces. */
export function xmlText(text: string): string {
  return harmlessText(text)
    .replace(notInXml, " ")
    .replace(/[&<>"']/g, (character) => entities[character]!);
}

/** XML 1.0, section 2.2; control characters and lone surrogates are gone already. */
const notInXml = /[\ufffe\uffff]/g;

const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};
