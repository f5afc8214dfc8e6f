/**
 * A plan of `count` circuits in which every one is made by a function from a table of rows: nothing of it can be read in the
 * text, all of it must be run.
 */
export function tabularPlanText(count) {
  const rows = Array.from(
    { length: count },
    (_, index) => `  { name: "circuit ${index}", load: ${4 + (index % 4)}, oneWayFt: ${6 + (index % 9)} },`,
  );
  return `import { build, circuit } from "loomwright";

build({ name: "measured build", voltage: 12, insulationC: 105 });

const panel = { sheathed: true, gauge: 12, protect: 10 } as const;
const rows = [
${rows.join("\n")}
];
for (const row of rows) circuit({ ...panel, ...row, continuous: row.load > 5 });
`;
}

/**
 * A plan of `count` circuits as people write them: constants, a factory, multi-line calls, comments.
 * Most are sound, one in twenty is not. The figures are invented for the measurement.
 */
export function planText(count) {
  const lines = [
    'import { build, circuit } from "loomwright";',
    "",
    'build({ name: "measured build", voltage: 12, insulationC: 105 });',
    "",
    "const panel = { sheathed: true } as const;",
    "function lamp(name: string, oneWayFt: number) {",
    "  return circuit({ ...panel, name, load: 2, oneWayFt, gauge: 16, protect: 5 });",
    "}",
    "",
  ];
  for (let index = 0; index < count; index++) {
    if (index % 5 === 4) {
      lines.push(`lamp("lamp ${index}", ${8 + (index % 12)});`);
    } else if (index % 20 === 7) {
      lines.push(`circuit({ name: "heater ${index}", load: 15, oneWayFt: 20, gauge: 14, protect: 20 });`);
    } else {
      lines.push(
        "circuit({",
        `  name: "circuit ${index}", // number ${index} on the panel`,
        `  load: ${4 + (index % 4)},`,
        `  oneWayFt: ${6 + (index % 9)},`,
        "  gauge: 12,",
        "  protect: 10,",
        "});",
      );
    }
  }
  return `${lines.join("\n")}\n`;
}
