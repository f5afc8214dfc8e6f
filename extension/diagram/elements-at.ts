import type { DiagramElement } from "../../server/language/messages.ts";

/** An element of a picture, with its place in the text. */
export type LocatedElement = Pick<DiagramElement, "id" | "location">;

/**
 * Ids of the elements written at a position of a text, in reading order: among all elements whose call encloses the position,
 * those of the innermost call. There are several if one call makes several, as a circuit makes its conductors and its load.
 *
 * @param uri in the spelling of the elements' locations
 */
export function elementsAt(elements: readonly LocatedElement[], uri: string, position: Position): string[] {
  const around = elements.flatMap(({ id, location }) =>
    location && location.uri === uri && encloses(location.range, position)
      ? [{ id, range: location.range }]
      : [],
  );
  return around
    .filter(
      ({ range }) => !around.some((other) => isWithin(other.range, range) && !isWithin(range, other.range)),
    )
    .map(({ id }) => id);
}

type Range = NonNullable<LocatedElement["location"]>["range"];
type Position = Range["start"];

function encloses({ start, end }: Range, position: Position): boolean {
  return !isBefore(position, start) && !isBefore(end, position);
}

function isWithin(inner: Range, outer: Range): boolean {
  return !isBefore(inner.start, outer.start) && !isBefore(outer.end, inner.end);
}

function isBefore(one: Position, other: Position): boolean {
  return one.line < other.line || (one.line === other.line && one.character < other.character);
}
