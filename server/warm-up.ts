import type { createChecker } from "./evaluate/checker.ts";
import type { Sandbox } from "./evaluate/sandbox.ts";
import type { Workspace } from "./evaluate/workspace.ts";

/**
 * Checks a small plan a few times: the builder's first plan then finds compiled code and a running sandbox. When an engine
 * takes over, a user is waiting for it.
 */
export async function warmUp(create: typeof createChecker, { sandbox, isOver }: WarmUp): Promise<void> {
  const uri = "file:///warm-up/plan.ts";
  for (let round = 0; round < rounds && !isOver(); round++) {
    const workspace: Workspace = {
      read: (asked) => (asked === uri ? { uri, version: round, text: planText(round) } : undefined),
      folders: () => [],
      realUri: (asked) => asked,
      planFiles: () => [uri],
    };
    await create(workspace, { sandbox }).check(uri);
  }
}

interface WarmUp {
  readonly sandbox: Sandbox;
  /** True when there is more urgent work. */
  isOver(): boolean;
}

const rounds = 10;

/** A little of everything: a network, a panel, circuits with and without faults, written out and from a loop. */
function planText(round: number): string {
  const lamps = Array.from(
    { length: 20 },
    (_, n) =>
      `circuit({ name: "lamp ${n}", load: ${2 + ((n + round) % 9)}, oneWayFt: ${8 + n}, gauge: 16, protect: 10 });`,
  );
  return `import { battery, build, cable, circuit, fusePanel } from "loomwright";
build({ insulationC: 105 });
const bank = battery({ name: "bank", chemistry: "LiFePO4", capacityAh: 100 });
const panel = fusePanel({ name: "panel", positions: 12, ratedA: 100, branchRatedA: 30 });
cable({ from: bank.positive, to: panel.feed, lengthFt: 3, gauge: 4, protect: 80 });
cable({ from: panel.negative, to: bank.negative, lengthFt: 3, gauge: 4 });
for (const load of [4, 12, 25]) circuit({ name: \`pump \${load}\`, from: panel.branch, load, oneWayFt: 12, gauge: 14, protect: 15 });
${lamps.join("\n")}
`;
}
