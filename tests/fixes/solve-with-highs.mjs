// Sizing problems, put to HiGHS as mixed-integer linear programmes: at given currents the drop of a run is a constant for each size,
// so with a binary variable for each size of each run both limits and copper are exactly linear.
// Reads a list of problems as JSON from its input, writes the list of optima, null for a problem without a solution.

import { readFileSync } from "node:fs";
import loadHighs from "highs";

const highs = await loadHighs();

function leastCopper({ runs, paths }) {
  const variable = (run, choice) => `x${run}_${choice}`;
  const upTo = runs.map(({ copperMm2M, last }) => Math.min(last, copperMm2M.length - 1));
  const choices = (run) => Array.from({ length: upTo[run] + 1 }, (_, choice) => choice);
  const terms = (pairs) => pairs.map(([factor, name]) => `${factor.toFixed(9)} ${name}`).join(" + ");
  const objective = runs.flatMap(({ copperMm2M }, run) =>
    choices(run).map((choice) => [copperMm2M[choice], variable(run, choice)]),
  );
  const one = (run) => terms(choices(run).map((choice) => [1, variable(run, choice)]));
  const drops = ({ legs }) =>
    terms(
      legs.flatMap(({ run, dropV }) => choices(run).map((choice) => [dropV[choice], variable(run, choice)])),
    );
  const lines = [
    "Minimize",
    ` obj: ${terms(objective)}`,
    "Subject To",
    ...runs.map((_, run) => ` one${run}: ${one(run)} = 1`),
    ...paths.map((path, index) => ` path${index}: ${drops(path)} <= ${path.allowedV.toFixed(9)}`),
    "Binary",
    ...runs.flatMap((_, run) => choices(run).map((choice) => ` ${variable(run, choice)}`)),
    "End",
  ];
  const solved = highs.solve(lines.join("\n"), { mip_rel_gap: 1e-6 });
  return solved.Status === "Optimal" ? solved.ObjectiveValue : null;
}

process.stdout.write(JSON.stringify(JSON.parse(readFileSync(0, "utf8")).map(leastCopper)));
process.exit(0);
