/**
 * A drawing of ours for use in a page with others: without prolog and metadata, and with every name in it made its own. Two
 * drawings thus never refer to each other.
 *
 * @param prefix a word that no other drawing of the page has.
 */
export function embeddedSvg(svg: string, prefix: string): string {
  const element = svg.slice(Math.max(svg.search(/<svg\b/), 0)).trimEnd();
  return element
    .replace(/<metadata\b[^>]*>.*?<\/metadata>|<metadata\b[^>]*\/>/gs, "")
    .replace(/<[a-z][^<>]*>/gi, (tag) => withOwnNames(tag, prefix));
}

/** Attributes that name an element, or refer to one. Their values are taken as they are written: escaped, in double quotes. */
function withOwnNames(tag: string, prefix: string): string {
  return tag.replace(/(\s)([\w:-]+)="([^"]*)"/g, (whole, space: string, attribute: string, value: string) => {
    const own = ownValue(attribute, value, prefix);
    return own === undefined ? whole : `${space}${attribute}="${own}"`;
  });
}

function ownValue(attribute: string, value: string, prefix: string): string | undefined {
  switch (attribute) {
    case "id":
      return `${prefix}-${value}`;
    case "href":
    case "xlink:href":
      return value.startsWith("#") ? `#${prefix}-${value.slice(1)}` : undefined;
    case "aria-labelledby":
    case "aria-describedby":
      return value
        .split(/\s+/)
        .map((id) => `${prefix}-${id}`)
        .join(" ");
    default:
      return value.includes("url(#") ? value.replaceAll("url(#", `url(#${prefix}-`) : undefined;
  }
}
