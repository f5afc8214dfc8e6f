import { describe, expect, test } from "vitest";
import { planUnderCursor } from "./feature.tester.ts";
import { hover, working } from "./hover.ts";

const plan = `circuit({ name: "winch", load: 40, oneWayFt: 15, gauge: ‸4, protect: 50, insulationC: 75 });`;

async function hoverText(marked: string, later?: string): Promise<string | undefined> {
  const { view, uri, position } = await planUnderCursor(marked, later === undefined ? {} : { later });
  const contents = hover(view, uri, position)?.contents;
  return contents && typeof contents === "object" && "value" in contents ? contents.value : undefined;
}

describe("hover", () => {
  test("tells current, drop, temperature and protection, each against its limit, with source and working", async () => {
    const text = await hoverText(plan);
    // 33 CFR 183.425, Table 5: 4 AWG, 75 °C: 125 A.
    expect(text).toContain("Current: **40 A**; may carry 125 A; margin 85 A · _33 CFR 183.425");
    expect(text).toMatch(
      /Drop, round trip: \*\*0\.3\d+ V, 2\.\d+ %\*\*; limit 1\.2 V, 10 %; margin 0\.8\d+ V · _limit: common/,
    );
    expect(text).toMatch(
      /Temperature of the conductor: \*\*34\.\d °C\*\*; 30 °C around it; limit 75 °C; margin 40\.\d °C/,
    );
    expect(text).toContain("Protection: **50 A**; allowed 40 to 125 A, aim 50 A, best 50 A; margin 75 A");
    expect(text).toContain("**How this was worked out**");
    expect(text).toContain("drop = load × resistance of the whole path");
  });

  test.each([
    ["the call", "cir‸cuit({ load: 40, oneWayFt: 15, gauge: 4, protect: 50 });"],
    ["the load", "circuit({ load: ‸40, oneWayFt: 15, gauge: 4, protect: 50 });"],
    ["the length", "circuit({ load: 40, oneWayFt: 1‸5, gauge: 4, protect: 50 });"],
    [
      "a constant far away",
      "const size = ‸4;\ncircuit({ load: 40, oneWayFt: 15, gauge: size, protect: 50 });",
    ],
  ])("answers on %s", async (_where, marked) => {
    expect(await hoverText(marked)).toContain("Current: **40 A**");
  });

  test("nowhere else", async () => {
    expect(await hoverText(`const x = "hel‸lo";\n${plan.replace("‸", "")}`)).toBeUndefined();
  });

  test("a value that serves several circuits shows them all, up to a point", async () => {
    const many = `const size = ‸4;\nfor (const name of ["a", "b", "c", "d", "e"]) circuit({ name, load: 40, oneWayFt: 15, gauge: size, protect: 50 });`;
    const text = await hoverText(many);
    expect(text).toContain("**a**");
    expect(text).toContain("**c**");
    expect(text).not.toContain("**d**");
    expect(text).toContain("2 other circuits with this value");
  });

  test("on the call, lists what was found at its values", async () => {
    const text = await hoverText(plan.replace("‸4", "12").replace("circuit", "cir‸cuit"));
    expect(text).toContain("**Found elsewhere in this circuit**");
    expect(text).toContain("`conductor/voltage-drop`");
  });

  test("does not repeat what the editor says of the value under the cursor", async () => {
    const text = await hoverText(plan.replace("‸4", "‸12"));
    expect(text).toContain("beyond it**");
    expect(text).not.toContain("Found elsewhere");
  });

  test.each([
    ["the circuit", plan.replace("insulationC", "ambientC: 999, insulationC")],
    ["the circuit (a misspelt name)", plan.replace("insulationC", "insulation")],
    ["the build", `${plan}\nbuild({ voltage: "24" as any });`],
  ])("says that nothing was judged where a value of %s cannot be used", async (_where, text) => {
    const shown = await hoverText(text);
    expect(shown).toContain("**winch**: not judged");
    expect(shown).not.toContain("may carry");
  });

  test("names no temperature that nobody can reckon", async () => {
    const text = await hoverText(plan.replace("‸4", "‸14"));
    expect(text).toContain("Temperature of the conductor: **beyond its limit of 75 °C**; 30 °C around it");
  });

  test("where no protection is allowed, none has a margin", async () => {
    const text = await hoverText(plan.replace("‸4", "‸14"));
    expect(text).toContain(
      "Protection: **50 A**; none is allowed: the load alone is above 20 A · _IEC 60364-4-43:2008, 433.1_",
    );
  });

  test("watts stand beside the current that was worked out from them", async () => {
    const text = await hoverText(plan.replace("load: 40", "loadW: 420, minimumV: 10.5"));
    expect(text).toContain("**winch**: 40 A (420 W / 10.5 V) at 12 V on 4 AWG");
  });

  test("a figure from memory says so", async () => {
    const text = await hoverText("circuit({ load: 10, oneWayM: 3, mm2: ‸6, protect: 15 });");
    expect(text).toContain("unconfirmed figure");
  });

  test("a published figure with the correction for ambient does not: both were read", async () => {
    const withAmbient = plan.replace("insulationC: 75", "insulationC: 75, ambientC: 45");
    expect(await hoverText(withAmbient)).toMatch(/Current: .* · _33 CFR 183\.425\(b\), Table 5_/);
    expect(await hoverText(plan)).toMatch(/Current: .* · _33 CFR 183\.425\(b\), Table 5_/);
  });

  test("a name cannot inject anything", async () => {
    const text = await hoverText(plan.replace('"winch"', '"[x](command:evil)<img src=x>**\\n# top"'));
    expect(text).toContain("\\[x\\]\\(command\\:evil\\)\\<img src\\=x\\>");
    expect(text).not.toContain("](command");
    expect(text).not.toMatch(/[^\\]<img/);
  });

  test("while half typed it says as of which text, and is silent where the text is being edited", async () => {
    const checked = plan.replace("‸", "");
    expect(
      await hoverText(checked, checked.replace("load: 40", "load: ").replace("protect: 50", "protect: ‸50")),
    ).toContain("As of the last complete text");
    expect(await hoverText(checked, checked.replace("gauge: 4", "gauge: 1‸"))).toBeUndefined();
  });

  test("the working of a circuit stands alone too", async () => {
    const { view, uri, position } = await planUnderCursor(plan);
    const answer = working(view, uri, position);
    expect(answer?.circuit).toBe("winch");
    expect(answer?.markdown).toContain("table × wires in parallel");
  });
});
