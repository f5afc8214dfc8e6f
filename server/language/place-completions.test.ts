import { describe, expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { testWorld } from "../../library/analysis/energy/world.tester.ts";
import { placeCompletions, typedPlace } from "./place-completions.ts";

const asked = { count: 0 };

/** `label: description` of each place at `‸`. */
function offered(marked: string) {
  const offset = marked.indexOf("‸");
  const text = marked.replace("‸", "");
  const document = TextDocument.create("file:///plan.ts", "typescript", 1, text);
  const typed = typedPlace(text, offset);
  if (!typed) return "no place";
  const { items, isIncomplete } = placeCompletions({
    ...{ text, offset, typed },
    places: () => {
      asked.count++;
      return testWorld().places;
    },
    positionAt: (at) => document.positionAt(at),
  });
  expect(isIncomplete).toBe(true);
  expect(items.length).toBeLessThanOrEqual(50);
  const after = (item: (typeof items)[0]) => TextDocument.applyEdits(document, [item.textEdit as never]);
  return {
    labels: items.map(({ label, labelDetails }) => `${label}: ${labelDetails?.description}`),
    texts: items.map(after),
  };
}

describe("after place", () => {
  test("names that begin so, the shortest first, with their country", () => {
    const { labels, texts } = offered('period({ name: "x", place: "Tarif‸" });') as Exclude<
      ReturnType<typeof offered>,
      string
    >;
    expect(labels[0]).toBe("Tarifa, ES: 36°, -5.6°");
    expect(texts[0]).toBe('period({ name: "x", place: "Tarifa, ES" });');
  });

  test("accents and capitals do not count, and text behind the cursor goes", () => {
    const { texts } = offered('period({\n  place: "koln‸xy",') as Exclude<ReturnType<typeof offered>, string>;
    expect(texts[0]).toBe('period({\n  place: "Köln, DE",');
  });

  test("a country narrows it, and several places of one name are one choice that says so", () => {
    const { labels } = offered('period({ place: "San Fernando, P‸" });') as Exclude<
      ReturnType<typeof offered>,
      string
    >;
    expect(labels).toEqual([expect.stringMatching(/^San Fernando, PH: \d places of this name$/)]);
  });

  test("at most fifty", () => {
    const { labels } = offered('period({ place: "S‸" });') as Exclude<ReturnType<typeof offered>, string>;
    expect(labels).toHaveLength(50);
  });

  test("the table of the world is not asked for without a letter, and elsewhere there is no list", () => {
    const before = asked.count;
    expect(offered('period({ place: "‸" });')).toEqual({ labels: [], texts: [] });
    expect(offered('period({ name: "place: ‸" });')).toBe("no place");
    expect(offered('circuit({ place: "Tar‸" });')).toBe("no place");
    expect(offered('period({ place: "Tarifa" }); circuit({ name: "Tar‸" });')).toBe("no place");
    expect(asked.count).toBe(before);
  });
});
