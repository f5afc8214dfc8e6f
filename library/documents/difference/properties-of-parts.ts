import type { Draw, InternalResistance, Join, Network, Part } from "../../model/network.ts";
import { formatExact, formatRounded, type Unit } from "../../rules/wording/format-number.ts";
import { terminalNameInWords } from "../../rules/wording/part-in-words.ts";
import { count, type Property, quantity, said, text } from "./property.ts";

/** The values that a builder states of a part, in comparable form, with defaults for those not stated. */
export function partProperties(part: Part, network: Network): Property[] {
  const values = part as unknown as Readonly<Record<string, unknown>>;
  const own = (Object.keys(fields) as Field[]).flatMap((field): Property[] => {
    const value = values[field];
    const told = fields[field];
    if (value === undefined || told === null) return [];
    if (typeof told === "function") return told(value as never, network);
    const { words, unit } = told;
    if (typeof value === "number")
      return [unit === undefined ? count(field, words, value) : quantity(field, words, value, unit)];
    return typeof value === "boolean" || typeof value === "string" ? said(value, field, words) : [];
  });
  return [
    ...own,
    ...Object.values(part.terminals).flatMap((terminal) => terminalProperties(part, network, terminal)),
  ];
}

/** Every property that any kind of part has. The compiler reports a new field of the model that is missing here. */
type Field = Exclude<FieldOf<Part>, "kind" | "index" | "record" | "name" | "terminals" | "accept">;
type FieldOf<One> = One extends Part ? keyof One : never;

interface Told {
  readonly words: string;
  readonly unit?: Unit | "Ah";
}

type Teller = (value: never, network: Network) => Property[];

/** In the order of the report. Null: reported by another field, or the source of a figure. */
const fields: Readonly<Record<Field, Told | Teller | null>> = {
  chemistry: { words: "chemistry" },
  statedBy: null,
  systemV: { words: "nominal voltage", unit: "V" },
  nominalV: { words: "nominal voltage", unit: "V" },
  capacityAh: { words: "capacity", unit: "Ah" },
  internal: ({ stated, lowOhm, highOhm }: InternalResistance) => [
    stated
      ? quantity("internalMilliohm", "internal resistance", lowOhm * 1000, "mΩ")
      : text(
          ...(["internalMilliohm", "internal resistance"] as const),
          `${formatRounded(lowOhm * 1000)} to ${formatRounded(highOhm * 1000)} mΩ, not stated`,
        ),
  ],
  shortCircuitA: { words: "short-circuit current", unit: "A" },
  fullV: null,
  fullVSource: null,
  maxDischargeA: { words: "may give", unit: "A" },
  maxChargeA: { words: "may be charged with", unit: "A" },
  ratedA: { words: "rating", unit: "A" },
  branchRatedA: { words: "rating of a branch", unit: "A" },
  studs: { words: "studs" },
  positions: { words: "positions" },
  hasNegativeBus: { words: "negative bus of its own" },
  ohm: (ohm: number) => [quantity("ohm", "resistance", ohm * 1000, "mΩ")],
  continuousW: { words: "continuous power", unit: "W" },
  surgeW: { words: "surge power", unit: "W" },
  loadW: { words: "power in use", unit: "W" },
  idleW: { words: "idle power", unit: "W" },
  efficiencyPercent: { words: "efficiency", unit: "%" },
  efficiencySource: null,
  cutOffV: { words: "cuts off at", unit: "V" },
  cutOffVSource: null,
  outputA: { words: "output current", unit: "A" },
  outputV: { words: "output voltage", unit: "V" },
  inputMaxA: { words: "maximum input current", unit: "A" },
  inputMinV: { words: "minimum input voltage", unit: "V" },
  inputMinVSource: null,
  isolated: { words: "input and output isolated" },
  continuousPercent: { words: "continuous share of its rating", unit: "%" },
  continuousSource: null,
  selfLimiting: { words: "limits its current" },
  openCircuitV: { words: "open-circuit voltage", unit: "V" },
  maxPowerV: { words: "voltage at maximum power", unit: "V" },
  maxPowerA: { words: "current at maximum power", unit: "A" },
  openCircuitPercentPerC: (percent: number) => [
    text("openCircuitPercentPerC", "open-circuit voltage changes by", `${formatExact(percent)} %/°C`),
  ],
  lowestC: { words: "lowest temperature", unit: "°C" },
  series: { words: "modules in series" },
  parallel: { words: "strings in parallel" },
  maxSeriesFuseA: { words: "maximum series fuse", unit: "A" },
  stringFuseA: { words: "fuse in each string", unit: "A" },
  maxInputV: { words: "maximum input voltage", unit: "V" },
  tracking: { words: "tracks the maximum power point" },
  draws: (draw: Draw) => drawn(draw),
  minimumV: { words: "minimum voltage of the device", unit: "V" },
  critical: { words: "critical" },
  continuous: { words: "continuous load" },
  dropLimitPercent: { words: "drop limit", unit: "%" },
  dropLimitStated: null,
  joins: (joins: readonly Join[], { terminals }: Network) =>
    joins.map(({ between: [one, other], ohm }) => {
      const ends = [terminals[one]?.name ?? "", terminals[other]?.name ?? ""].join(" to ");
      return quantity(`joins.${ends}`, `inside, ${ends}`, ohm * 1000, "mΩ");
    }),
  source: { words: "source of its figures" },
  price: { words: "price" },
};

function drawn(draw: Draw): Property[] {
  switch (draw.as) {
    case "current":
      return [quantity("draws", "load", draw.currentA, "A")];
    case "power":
      return [quantity("drawsW", "load", draw.powerW, "W")];
    case "resistance":
      return [quantity("drawsOhm", "load", draw.ohm, "Ω")];
    case "motor":
      return [
        quantity("runningA", "running current", draw.runningA, "A"),
        quantity("startingA", "starting current", draw.startingA, "A"),
      ];
  }
}

function terminalProperties(part: Part, network: Network, index: number): Property[] {
  const { name, termination, torqueNm } = network.terminals[index]!;
  const words = terminalNameInWords(part, name).replace(/^(?:the|a) /, "");
  return [
    ...said(termination, `${name}.termination`, `${words}, fastened by`),
    ...(torqueNm === undefined ? [] : [count(`${name}.torqueNm`, `${words}, torque in N·m`, torqueNm)]),
  ];
}
