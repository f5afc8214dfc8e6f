import type { PropertyTable } from "../../../library/model/property-table.ts";
import { words } from "../../../library/model/record.ts";
import { wordProperties } from "../../../library/model/word-properties.ts";

/**
 * Every property of every DSL function, those of objects and of the elements of lists included: "circuit.protect.ratingA",
 * "scenario.charges.percent". `accept` is one property: its rules are all read alike. So are the pairs of `joins`, which are
 * read as a whole.
 */
export const propertyPaths: readonly string[] = words.flatMap((word) => pathsOf(word, wordProperties[word]));

function pathsOf(prefix: string, { properties }: PropertyTable): string[] {
  return [...properties].flatMap(([name, { parts, elements }]) => {
    const path = `${prefix}.${name}`;
    const inner = name === "accept" ? undefined : (parts ?? elements?.table);
    return inner ? [path, ...pathsOf(path, inner)] : [path];
  });
}
