import { describe, expect, test } from "vitest";
import { table5 } from "../../standards/ampacity-33cfr183-425.ts";
import { annexA } from "../../standards/ampacity-iso10133.ts";
import type { Citation } from "../../standards/citation.ts";
import { criticalDropLimit, ordinaryDropLimit, statedDropLimit } from "../../standards/drop-limits.ts";
import { ratingOverConductor } from "../../standards/protection-rules.ts";
import { resistanceOfAwg } from "../../standards/resistance-awg.ts";
import { resistanceOfClass5 } from "../../standards/resistance-iec60228.ts";
import { sourceInFull, sourceInWords } from "./source-in-words.ts";

describe("a citation in words", () => {
  test.each<[Citation, string]>([
    [table5.source, "33 CFR 183.425(b), Table 5"],
    [annexA.source, "ISO 10133:2012 Annex A, unconfirmed figure"],
    [resistanceOfClass5.source, "IEC 60228:2004 Table 3, class 5, plain copper"],
    [resistanceOfAwg.source, "ASTM B258, diameter formula; resistivity at 20 °C"],
    [criticalDropLimit.source, "ISO 10133:2012, 4.8"],
    [ratingOverConductor.source, "33 CFR 183.455(c)(1)"],
    [ordinaryDropLimit.source, "common practice, no source"],
    [statedDropLimit, "stated in the plan"],
  ])("%#: %o", (source, words) => {
    expect(sourceInWords(source)).toBe(words);
  });

  test("in full, it says how far it is confirmed", () => {
    expect(sourceInFull(table5.source)).toContain("regulation, read in the document. Written for boats");
    expect(sourceInFull(annexA.source)).toContain("standard, from memory, unconfirmed figure.");
    expect(sourceInFull(ordinaryDropLimit.source)).toBe("Common practice, no source.");
  });
});
