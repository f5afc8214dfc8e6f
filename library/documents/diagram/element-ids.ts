import { displayName } from "../../model/display-name.ts";

/**
 * Ids for drawn elements: the same as long as the plan's own name stays, and unique in one picture. For any name in the plan,
 * they contain only letters, figures and marks that are safe in an attribute, a selector and a message.
 */
export function elementIds(): (kind: string, name: string, which?: string) => string {
  const taken = new Set<string>();
  return (kind, name, which) => {
    const plain = encodeURIComponent(displayName(name)).replace(/[!'()*~]/g, "_");
    const wanted = [kind, plain, which].filter((piece) => piece !== undefined).join(":");
    let id = wanted;
    for (let again = 2; taken.has(id); again++) id = `${wanted}~${again}`;
    taken.add(id);
    return id;
  };
}
