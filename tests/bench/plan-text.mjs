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

/**
 * A whole network of about `branches` conductors, as people write it: a bank behind its fuse, disconnect and shunt, bus bars,
 * and a fuse panel for every eight circuits, each circuit a positive and a return conductor.
 * One circuit in ten is too thin for its length. The figures are invented for the measurement.
 */
export function networkPlanText(branches) {
  const circuits = Math.max(4, Math.round((branches - 4) / 2.25));
  const lines = [
    'import { battery, build, busBar, cable, circuit, disconnect, fusePanel, shunt } from "loomwright";',
    "",
    'build({ name: "measured network", voltage: 24, insulationC: 105 });',
    "",
    `const bank = battery({ chemistry: "LiFePO4", capacityAh: ${100 + circuits * 10}, internalMilliohm: ${(20 / circuits).toFixed(4)} });`,
    "const main = disconnect({ ratedA: 2000 });",
    "const meter = shunt({ ratedA: 2000 });",
    'const positive = busBar({ side: "positive" });',
    'const negative = busBar({ side: "negative" });',
    'const classT = { family: "UL 248-15 Class T", interruptingA: 200_000 } as const;',
    'const heavy = { gauge: "4/0", parallel: 8, bundledWith: 0 } as const;',
    "cable({ ...heavy, from: bank.positive, to: main.line, lengthFt: 1, protect: { ...classT, ratingA: 1200, distanceIn: 6 } });",
    "cable({ ...heavy, from: main.load, to: positive.stud, lengthFt: 1 });",
    "cable({ ...heavy, from: bank.negative, to: meter.batterySide, lengthFt: 1 });",
    "cable({ ...heavy, from: meter.systemSide, to: negative.stud, lengthFt: 1 });",
    "",
  ];
  for (let index = 0; index < circuits; index++) {
    const panel = Math.floor(index / 8);
    if (index % 8 === 0) {
      lines.push(
        "",
        `const panel${panel} = fusePanel({ positions: 8, ratedA: 100 });`,
        "circuit({",
        `  name: "feeder of panel ${panel}",`,
        "  from: positive.stud,",
        "  returnTo: negative.stud,",
        `  to: panel${panel},`,
        `  oneWayFt: ${3 + (panel % 5)},`,
        "  gauge: 4,",
        "  protect: { ...classT, ratingA: 80, distanceIn: 4 },",
        "});",
      );
    }
    lines.push(
      "circuit({",
      `  name: "circuit ${index}", // position ${index % 8} of panel ${panel}`,
      `  from: panel${panel}.branch,`,
      `  load: ${3 + (index % 4)},`,
      `  oneWayFt: ${index % 10 === 7 ? 60 : 6 + (index % 9)},`,
      `  gauge: ${index % 10 === 7 ? 16 : 12},`,
      "  protect: 10,",
      "});",
    );
  }
  return `${lines.join("\n")}\n`;
}
