// How long a hover on one plan takes while another plan is being checked: an ordinary plan is open, and beside it an extremely
// heavy plan, of each kind. All in one run, beside the same hover without any other plan open.

import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { loomwrightServer } from "./peers.mjs";
import { planText } from "./plan-text.mjs";

const hovers = 40;

/** Each is within the limits of a plan: 20,000 records, and a second of running. */
const heavyPlans = {
  "1,500 batteries on one bus": `import { battery, busbar, cable } from "loomwright";
const bus = busbar({ name: "bus", ratedA: 600, studs: 2000 });
for (let n = 0; n < 1_500; n++) {
  const bank = battery({ name: \`bank \${n}\`, chemistry: "LiFePO4", capacityAh: 100, nominalV: 12.8 });
  cable({ from: bank.positive, to: bus.stud, lengthM: 1, gauge: 4, protect: 60 });
}
`,
  "15,000 circuits": `import { circuit } from "loomwright";
for (let n = 0; n < 15_000; n++) circuit({ name: \`lamp \${n}\`, load: 48, oneWayFt: 40, gauge: 12 });
`,
  "10,000 scenarios": `import { battery, cable, load, scenario } from "loomwright";
const bank = battery({ name: "bank", chemistry: "LiFePO4", capacityAh: 100, nominalV: 12.8 });
const lamp = load({ name: "lamp", load: 2 });
cable({ from: bank.positive, to: lamp.positive, lengthM: 1, gauge: 14, protect: 10 });
cable({ from: lamp.negative, to: bank.negative, lengthM: 1, gauge: 14 });
for (let n = 0; n < 10_000; n++) scenario({ name: \`evening \${n}\`, on: [lamp] });
`,
  "arrow functions in arrow functions": `import { circuit } from "loomwright";
${"async(".repeat(26)}
`,
};

/** By name of the heavy plan, ms: the median and the longest hover on the plan beside it; "nothing else" is the hover alone. */
export async function hoverBench(folder) {
  const results = {};
  for (const [name, text] of [["nothing else", undefined], ...Object.entries(heavyPlans)]) {
    results[name] = await hoversBeside(folder, text);
  }
  return results;
}

async function hoversBeside(folder, heavyText) {
  const server = await loomwrightServer(folder);
  try {
    const plan = join(folder, "hovered.ts");
    const text = planText(30);
    writeFileSync(plan, text);
    await server.open(plan, text);
    // The person has looked at the plan for a moment.
    for (let n = 0; n < 10; n++) {
      await server.hover(plan, text, "gauge");
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    const heavy = join(folder, "heavy.ts");
    if (heavyText !== undefined) server.openUnasked(heavy, heavyText);
    const times = [];
    for (let n = 0; n < hovers; n++) {
      // Each edit of the heavy plan causes a new check, as typing in it would.
      if (heavyText !== undefined && n % 10 === 9) server.changeUnasked(heavy, `${heavyText}// ${n}\n`);
      const before = performance.now();
      const answer = await server.hover(plan, text, "gauge");
      times.push(performance.now() - before);
      if (!answer?.contents) throw new Error("the hover came back empty");
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    times.sort((a, b) => a - b);
    return { medianMs: times[hovers / 2], longestMs: times.at(-1) };
  } finally {
    server.close();
  }
}
