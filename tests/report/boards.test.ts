import { describe, expect, test } from "vitest";
import { reportHtml } from "../../library/documents/report/report-html.ts";
import { camperPlan } from "../front-view/camper-plan.ts";
import { reported, tableOf, wordsOf } from "./reported-plan.ts";

const words = [...new Set(camperPlan.match(/\b[a-zA-Z]+(?=\(\{)/g))].join(", ");
const camper = `import { ${words} } from "loomwright";\n${camperPlan}`;

describe("the boards in the report", () => {
  const captionsOf = async (edition: "inspector" | "bench") => {
    const { blocks } = await reported(camper, edition);
    return blocks.flatMap((block) => (block.kind === "figure" ? [block.caption] : []));
  };

  test("a front view of each surface", async () => {
    const captions = await captionsOf("inspector");
    expect(captions).toContain("Front view of Board behind the bench, to scale");
    expect(captions).toContain("Front view of Locker floor, to scale");
  });

  test("the edition for the bench stays short, and names the command that draws them", async () => {
    expect((await captionsOf("bench")).filter((caption) => caption.startsWith("Front view"))).toEqual([]);
    expect(wordsOf(await reported(camper, "bench")).join("\n")).toContain("loomwright draw --view board");
  });

  test("a row for each part with its place, and for each channel with its length and its conductors", async () => {
    const content = await reported(camper);
    const cells = (id: string, first: string) =>
      tableOf(content, id)
        .rows.map((row) => row.map((cell) => (typeof cell === "object" ? (cell?.text ?? "") : cell)))
        .find(([name]) => name === first);
    expect(cells("part-places", "Inverter 2 kW")).toEqual([
      "Inverter 2 kW",
      "Board behind the bench",
      ...["90", "70", "320 × 260 × 130", "upright"],
    ]);
    expect(cells("part-places", "Charger from the alternator")?.at(-1)).toBe("left side up");
    expect(cells("part-places", "Mast lamp")?.[1]).toBe("at the end of Mast conduit, 300 mm beyond it");
    expect(cells("part-places", "Water pump")?.[1]).toBe("no place yet");
    expect(cells("channels", "Main trunking")).toEqual([
      "Main trunking",
      "trunking",
      "along Board behind the bench",
      ...["1,120", "7"],
    ]);
    expect(cells("channels", "Mast conduit")?.[2]).toBe("from Board behind the bench to a free end");
  });

  test("the page names what was not judged", async () => {
    const said = wordsOf(await reported(camper)).join("\n");
    expect(said).toContain("Without a place: Water pump.");
    expect(said).toContain("Without a size, so neither overlap nor fit is judged: Reading lamp.");
    expect(said).toContain("because a part at an end has no place: Pump circuit.");
  });

  test("ids of the page stay unique with several front views in it", async () => {
    const page = reportHtml(await reported(camper));
    const ids = [...page.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });

  test("a plan without surfaces has no such chapter", async () => {
    const { blocks } = await reported(
      `import { circuit } from "loomwright";\ncircuit({ name: "fan", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });\n`,
    );
    const titles = blocks.flatMap((block) => (block.kind === "heading" ? [block.text] : []));
    expect(titles).not.toContain("Boards and places");
    expect(titles.length).toBeGreaterThan(5);
  });
});
