import type { Wire, WireEnd } from "./wires.ts";

/* For tests: wires with only the values that distinguish them. */

/** "bank positive" → the terminal positive of the part bank. */
export function endAt(words: string, inLine?: WireEnd["inLine"]): WireEnd {
  const [, part, terminal] = /^(.*) (\S+)$/.exec(words) as unknown as [string, string, string];
  return {
    ...{
      at: "terminal",
      part,
      terminal,
      termination: undefined,
      usualFitting: undefined,
      torqueNm: undefined,
      protection: null,
    },
    ...(inLine && { inLine }),
  };
}

export function sampleWire(given: Partial<Wire> & Pick<Wire, "name">): Wire {
  return {
    record: 0,
    role: "cable",
    side: "positive",
    conductor: undefined,
    from: endAt("bank positive"),
    to: endAt("bus stud"),
    colour: "red",
    size: { parallel: 1, system: "metric", mm2: 10 },
    duplex: undefined,
    lengthM: 1,
    cutLengthM: 1.3,
    lengthUnit: "m",
    insulationC: 90,
    insulationStated: true,
    label: given.name,
    ...given,
  };
}

/** Both conductors of a circuit that states its load itself. */
export function sampleCircuitWires(name: string, panel = "panel"): readonly Wire[] {
  const load = (terminal: string): WireEnd => ({ ...endAt(`${name} ${terminal}`), at: "ownLoad" });
  return [
    sampleWire({ name, role: "positive", from: endAt(`${panel} branch`), to: load("positive") }),
    sampleWire({
      name,
      role: "return",
      side: "negative",
      from: load("negative"),
      to: endAt(`${panel} negative`),
    }),
  ];
}
