import type { Part } from "../../../model/network.ts";
import { descriptorOf } from "../../../model/parts/index.ts";
import { workedOutOnce } from "../../../model/worked-out-once.ts";

/** The two terminals between which a part feeds or draws. A charger has two such pairs. */
export interface Port {
  readonly part: Part;
  readonly does: "feeds" | "draws";
  readonly positive: number;
  readonly negative: number;
}

/** Every pair of poles of a part; none for parts that only pass current on. */
export const portsOf: (part: Part) => readonly Port[] = workedOutOnce((part) => {
  const terminals: Readonly<Record<string, number>> = part.terminals;
  return descriptorOf(part).ports.map(({ does, positive, negative }) => ({
    part,
    does,
    positive: terminals[positive]!,
    negative: terminals[negative]!,
  }));
});
