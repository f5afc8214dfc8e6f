import type { Part } from "../../../model/network.ts";

/** The two terminals between which a part feeds or draws. A charger has two such pairs. */
export interface Port {
  readonly part: Part;
  readonly does: "feeds" | "draws";
  readonly positive: number;
  readonly negative: number;
}

/** Every pair of poles of a part; none for parts that only pass current on. */
export function portsOf(part: Part): readonly Port[] {
  switch (part.kind) {
    case "battery":
    case "alternator":
    case "shoreCharger":
    case "solarArray":
      return [{ part, does: "feeds", ...part.terminals }];
    case "load":
    case "inverter":
      return [{ part, does: "draws", ...part.terminals }];
    case "dcDcCharger": {
      const { inputPositive, inputNegative, outputPositive, outputNegative } = part.terminals;
      return [
        { part, does: "draws", positive: inputPositive, negative: inputNegative },
        { part, does: "feeds", positive: outputPositive, negative: outputNegative },
      ];
    }
    case "solarController": {
      const { solarPositive, solarNegative, positive, negative } = part.terminals;
      return [
        { part, does: "draws", positive: solarPositive, negative: solarNegative },
        { part, does: "feeds", positive, negative },
      ];
    }
    default:
      return [];
  }
}
