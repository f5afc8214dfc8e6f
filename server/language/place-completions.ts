import {
  type CompletionItem,
  CompletionItemKind,
  type CompletionList,
  type Position,
} from "vscode-languageserver-types";
import type { PlaceTable } from "../../library/analysis/energy/places.ts";
import { editorWords } from "./plain-words.ts";

/** The text between the quotes of a period's `place`, as offsets. */
export interface TypedPlace {
  readonly start: number;
  readonly end: number;
}

/** The place that is being typed at the cursor. Only scans the text: half-typed text has no reliable tree. */
export function typedPlace(text: string, offset: number): TypedPlace | undefined {
  const before = text.slice(Math.max(0, offset - longestCall), offset);
  const found = before.match(/\bplace["']?\s*:\s*(["'])([^"'\n]*)$/);
  if (!found) return undefined;
  const lastCall = [...before.slice(0, found.index).matchAll(/([\w$]+)\s*\(/g)].at(-1)?.[1];
  if (lastCall !== "period") return undefined;
  const after = text.slice(offset).match(/^[^"'\n]*/)![0];
  return { start: offset - found[2]!.length, end: offset + after.length };
}

/** No place is further behind the beginning of its period than this. */
const longestCall = 2_000;

/**
 * Places whose names begin with the text, accents and capitals aside, each with its country: that makes most names clear. `places` is
 * asked only here, because it reads the table of the world.
 */
export function placeCompletions(of: {
  readonly text: string;
  readonly offset: number;
  readonly typed: TypedPlace;
  readonly places: () => PlaceTable;
  readonly positionAt: (offset: number) => Position;
}): CompletionList {
  const { text, offset, typed, places, positionAt } = of;
  const written = text.slice(typed.start, offset);
  const range = { start: positionAt(typed.start), end: positionAt(typed.end) };
  const found = written.trim() === "" ? [] : places().beginning(written, mostOffered);
  const items = found.map(([place, ...others], index): CompletionItem => {
    const newText = `${place.name}, ${place.country}`;
    return {
      label: editorWords(newText),
      labelDetails: {
        description: editorWords(
          others.length === 0
            ? `${place.latitudeDeg}°, ${place.longitudeDeg}°`
            : `${others.length + 1} places of this name`,
        ),
      },
      ...(others.length > 0 && {
        detail: editorWords("latitudeDeg and longitudeDeg make it clear; the finding has them as fixes"),
      }),
      kind: CompletionItemKind.Value,
      sortText: String(index).padStart(3, "0"),
      // The list is filtered here: the editor would not find an accent that was left out.
      filterText: written,
      textEdit: { range, newText },
    };
  });
  return { isIncomplete: true, items };
}

const mostOffered = 50;
