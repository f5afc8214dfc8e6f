import { describe, expect, it, test } from "vitest";
import { analyseCircuit } from "../analysis/analyse-circuit.ts";
import { sampleCircuit } from "../analysis/sample-circuit.tester.ts";
import type { CircuitRun } from "../model/run.ts";
import { derivation, derivationSteps } from "./derivation.ts";

function stepsOf(change: Partial<CircuitRun> = {}): Record<string, string> {
  const circuit = sampleCircuit(change);
  const steps = derivationSteps({ circuit, result: analyseCircuit(circuit) });
  return Object.fromEntries(
    steps.map(({ title, withNumbers, result }) => [title, `${withNumbers} = ${result}`]),
  );
}

describe("the working of 40 A over 15 ft of 4 AWG", () => {
  // By hand: 30 + 45 · (40/125)² = 34.608 °C; 0.8152 · 1.02 · (1 + 0.00393 · 14.608) = 0.87924 mΩ/m; · 9.144 m = 8.0398 mΩ;
  // · 40 A = 0.32159 V; 2.68 % of 12 V; 1.25 · 40 A = 50 A.
  it("shows every step with its numbers", () => {
    expect(stepsOf()).toEqual({
      "Ampacity of 4 AWG": "125 A × 1 = 125 A",
      "Temperature of the conductor": "30 °C + (75 − 30) °C × (40 A / 125 A)² = 34.6 °C",
      "Resistance of 4 AWG at 34.6 °C, per metre":
        "0.815 mΩ/m × 1.02 × (1 + 0.00393 × (34.6 − 20)) = 0.879 mΩ/m",
      "Resistance of the whole path, out and back": "0.879 mΩ/m × 9.14 m (30 ft) / 1 = 8.04 mΩ",
      "Voltage drop": "40 A × 8.04 mΩ = 0.322 V",
      "Voltage drop, of the nominal voltage": "100 % × 0.322 V / 12 V = 2.68 %, limit 10 %",
      "Protection allowed": "40 A ≤ rating ≤ 125 A = 40 to 125 A",
      "Protection to aim at": "1.25 × 40 A = 50 A; 50 A is a standard rating",
    });
  });

  it("is a numbered list in Markdown, with formula and source at each step", () => {
    const circuit = sampleCircuit();
    expect(derivation({ circuit, result: analyseCircuit(circuit) })).toMatchInlineSnapshot(`
      "1. Ampacity of 4 AWG: **125 A**  
         ampacity = table × wires in parallel; table: 4 AWG, column of 75 °C  
         \`125 A × 1\`  
         _33 CFR 183.425(b), Table 5_

      2. Temperature of the conductor: **34.6 °C**  
         temperature = ambient + (column − ambient) × (load / ampacity)²  
         \`30 °C + (75 − 30) °C × (40 A / 125 A)²\`  
         _follows from the definition of ampacity: at it, the conductor is as hot as its column states_

      3. Resistance of 4 AWG at 34.6 °C, per metre: **0.879 mΩ/m**  
         resistance = table at 20 °C × strand factor × (1 + 0.00393 × (temperature − 20 °C))  
         \`0.815 mΩ/m × 1.02 × (1 + 0.00393 × (34.6 − 20))\`  
         _ASTM B258, diameter formula; resistivity at 20 °C; NFPA 70 Chapter 9, Table 8, stranded uncoated copper over the value for solid wire; Annealed copper standard, temperature coefficient of resistance at 20 °C_

      4. Resistance of the whole path, out and back: **8.04 mΩ**  
         resistance = resistance per metre × length of both conductors / wires in parallel  
         \`0.879 mΩ/m × 9.14 m (30 ft) / 1\`  
         _Ohm's law_

      5. Voltage drop: **0.322 V**  
         drop = load × resistance of the whole path  
         \`40 A × 8.04 mΩ\`  
         _Ohm's law_

      6. Voltage drop, of the nominal voltage: **2.68 %, limit 10 %**  
         percentage = 100 % × drop / nominal voltage  
         \`100 % × 0.322 V / 12 V\`  
         _limit: common practice, no source_

      7. Protection allowed: **40 to 125 A**  
         load ≤ rating ≤ ampacity  
         \`40 A ≤ rating ≤ 125 A\`  
         _IEC 60364-4-43:2008, 433.1_

      8. Protection to aim at: **50 A; 50 A is a standard rating**  
         rating = 1.25 × load, then the next standard rating up to the ampacity  
         \`1.25 × 40 A\`  
         _NFPA 70 210.20(A) and 215.3; standard ratings of all families, unconfirmed figure_

      Shown to three figures, worked out with all of them."
    `);
  });
});

describe("steps that only some circuits need", () => {
  test("watts, at the device's least voltage", () => {
    const steps = stepsOf({ loadW: 420, loadA: 40, loadAtV: 10.5, minimumV: 10.5 });
    expect(steps.Load).toBe("420 W / 10.5 V = 40 A");
    expect(steps["Voltage at the device"]).toBe("12 V − 0.322 V = 11.7 V, needed 10.5 V");
  });

  test("engine space and bundle: 33 CFR 183.425 Table 5, notes 1 and 2", () => {
    const steps = stepsOf({ insulationC: 105, engineSpace: true, bundledWith: 3 });
    expect(steps["Factor for the engine space"]).toBe("column of 105 °C, engine space of 50 °C = 0.85");
    expect(steps["Factor for the bundle"]).toBe("4 conductors together = 0.6");
    expect(steps["Ampacity of 4 AWG"]).toBe("160 A × 1 × 0.85 × 0.6 = 81.6 A");
  });

  test("ambient: √(25 / 45)", () => {
    expect(stepsOf({ ambientC: 50, ambientStated: true })["Factor for the ambient"]).toBe(
      "√((75 − 50) / (75 − 30)) = 0.745",
    );
  });

  test("metric: no strand factor, and the ampacity is called unconfirmed", () => {
    const circuit = sampleCircuit({ conductor: { parallel: 1, system: "metric", mm2: 25 } });
    const steps = derivationSteps({ circuit, result: analyseCircuit(circuit) });
    const resistance = steps.find(({ title }) => title.startsWith("Resistance of 25 mm²"));
    expect(resistance?.withNumbers).toMatch(/^0\.78 mΩ\/m × \(1 \+ 0\.00393/);
    expect(resistance?.sources[0]).toBe("IEC 60228:2004 Table 3, class 5, plain copper");
    expect(steps.find(({ title }) => title === "Ampacity of 25 mm²")?.sources).toEqual([
      "ISO 10133:2012 Annex A, unconfirmed figure",
    ]);
  });
});

describe("what cannot be told is said so", () => {
  test("an overloaded conductor", () => {
    const steps = stepsOf({ loadA: 150 });
    expect(steps["Temperature of the conductor"]).toContain("above 75 °C, overloaded; 75 °C is taken");
    expect(steps["Voltage drop"]).toContain("= at least");
    expect(steps["Protection allowed"]).toBe("150 A ≤ rating ≤ 125 A = none");
    expect(steps["Protection to aim at"]).toContain("no standard rating from there up to the ampacity");
  });

  test("a place as hot as the insulation", () => {
    const steps = stepsOf({ ambientC: 75, ambientStated: true });
    expect(steps["Ampacity of 4 AWG"]).toBe("75 °C in the place, 75 °C in the column = not judged");
    expect(steps["Temperature of the conductor"]).toBeUndefined();
    expect(steps["Protection allowed"]).toContain("not judged");
    expect(steps["Protection to aim at"]).toContain("upper limit not judged");
  });

  test("a drop just above its limit does not read as the limit", () => {
    const limit = stepsOf({ dropLimitPercent: 2.6799 })["Voltage drop, of the nominal voltage"];
    const [percent, most] = limit?.match(/= ([\d.]+) %, limit ([\d.]+) %/)?.slice(1) ?? [];
    expect(percent).not.toBe(most);
  });

  test("every step names a source", () => {
    const circuit = sampleCircuit({ engineSpace: true, bundledWith: 4, loadW: 480 });
    for (const { sources } of derivationSteps({ circuit, result: analyseCircuit(circuit) }))
      for (const source of sources) expect(source).not.toBe("");
  });
});
