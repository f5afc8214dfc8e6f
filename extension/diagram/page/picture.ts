import { attributeIs, elementIs } from "../allowed-svg.ts";

/**
 * A picture as elements of this page. It is rebuilt from allowed content only. If it contains anything else, none of it is shown:
 * half a wiring diagram would be worse than none.
 */
export function readPicture(text: string): SVGSVGElement | Refused {
  const { documentElement: root, doctype } = new DOMParser().parseFromString(text, "image/svg+xml");
  if (doctype) return { refused: "a document type, which may define any entity" };
  if (root.localName !== "svg" || root.namespaceURI !== svgNamespace)
    return { refused: "a root element that is not an SVG" };
  try {
    return copyOf(root, 0) as SVGSVGElement;
  } catch (error) {
    if (error instanceof NotAllowed) return { refused: error.message };
    throw error;
  }
}

export interface Refused {
  /** The forbidden content that was found. */
  readonly refused: string;
}

export function isRefused(picture: SVGSVGElement | Refused): picture is Refused {
  return "refused" in picture;
}

export const svgNamespace = "http://www.w3.org/2000/svg";

class NotAllowed extends Error {}

/** Our pictures are a few groups deep. */
const deepest = 32;

function copyOf(element: Element, depth: number): SVGElement {
  const { localName, namespaceURI } = element;
  if (namespaceURI !== svgNamespace || elementIs(localName) === "refused" || depth > deepest) {
    throw new NotAllowed(`an element <${element.nodeName}>`);
  }
  const copy = document.createElementNS(svgNamespace, localName) as SVGElement;
  for (const { name, value, namespaceURI: namespace, prefix } of element.attributes) {
    // Namespace declarations are not content.
    if (name === "xmlns" || prefix === "xmlns") continue;
    // "xml:space" and "xml:lang" state how to read the text.
    if (prefix === "xml") continue;
    const kind = namespace === null ? attributeIs(name, value) : "refused";
    if (kind === "refused") throw new NotAllowed(`an attribute ${name} on <${localName}>`);
    if (kind === "taken") copy.setAttribute(name, value);
  }
  for (const child of element.childNodes) {
    if (child instanceof Text) copy.append(child.data);
    else if (child instanceof Element && isTaken(child)) copy.append(copyOf(child, depth + 1));
  }
  return copy;
}

/** Refused elements are included here: copying them reports the refusal. */
function isTaken({ namespaceURI, localName }: Element): boolean {
  return namespaceURI !== svgNamespace || elementIs(localName) !== "left out";
}
