/**
 * A plan of `count` circuits made in a loop over a table of rows: no circuit can be read from the text, all of it must be run.
 * One circuit in `everyWrong` is too thin for its length.
 */
export function tabularPlanText(count, everyWrong = Number.POSITIVE_INFINITY) {
  const rows = Array.from({ length: count }, (_, index) => {
    const oneWayFt = index % everyWrong === 7 ? 90 : 6 + (index % 9);
    return `  { name: "circuit ${index}", load: ${4 + (index % 4)}, oneWayFt: ${oneWayFt} },`;
  });
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
 * A whole network of about `branches` conductors, as people write it: a bank behind its fuse, disconnect and shunt, bus bars, and
 * a fuse panel for every eight circuits, each circuit a positive and a return conductor. Beyond some 300 branches there are
 * several such banks, connected to one another with a fuse at each end, to keep one network.
 * One circuit in ten is too thin for its length. The figures are invented for the measurement.
 */
export function networkPlanText(branches) {
  const circuits = Math.max(4, Math.round((branches - 4) / 2.25));
  const lines = [
    'import { battery, build, busBar, cable, circuit, disconnect, fusePanel, shunt } from "loomwright";',
    "",
    'build({ name: "measured network", voltage: 24, insulationC: 105 });',
    "",
    'const classT = { family: "UL 248-15 Class T", interruptingA: 200_000, ratedV: 125 } as const;',
    'const heavy = { gauge: "4/0", parallel: 4 } as const;',
  ];
  for (let index = 0; index < circuits; index++) {
    const panel = Math.floor(index / 8);
    const bank = Math.floor(index / circuitsOfBank);
    if (index % circuitsOfBank === 0) lines.push(...bankLines(bank));
    if (index % 8 === 0) {
      lines.push(
        "",
        `const panel${panel} = fusePanel({ positions: 8, ratedA: 100 });`,
        "circuit({",
        `  name: "feeder of panel ${panel}",`,
        `  from: positive${bank}.stud,`,
        `  returnTo: negative${bank}.stud,`,
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

const circuitsOfBank = 128;

function bankLines(bank) {
  const lines = [
    "",
    `const bank${bank} = battery({ chemistry: "LiFePO4", capacityAh: 2_000, internalMilliohm: 0.5 });`,
    `const main${bank} = disconnect({ ratedA: 1200 });`,
    `const meter${bank} = shunt({ ratedA: 1200 });`,
    `const positive${bank} = busBar({ side: "positive" });`,
    `const negative${bank} = busBar({ side: "negative" });`,
    "cable({",
    "  ...heavy,",
    `  from: bank${bank}.positive,`,
    `  to: main${bank}.line,`,
    "  lengthFt: 1,",
    "  protect: { ...classT, ratingA: 800, distanceIn: 6 },",
    "});",
    `cable({ ...heavy, from: main${bank}.load, to: positive${bank}.stud, lengthFt: 1 });`,
    `cable({ ...heavy, from: bank${bank}.negative, to: meter${bank}.batterySide, lengthFt: 1 });`,
    `cable({ ...heavy, from: meter${bank}.systemSide, to: negative${bank}.stud, lengthFt: 1 });`,
  ];
  if (bank > 0) {
    lines.push(
      "cable({",
      `  from: positive${bank - 1}.stud,`,
      `  to: positive${bank}.stud,`,
      "  lengthFt: 30,",
      "  gauge: 2,",
      "  protect: { ...classT, ratingA: 150, distanceIn: 4 },",
      "  protectFarEnd: { ...classT, ratingA: 150, distanceIn: 4 },",
      "});",
      `cable({ from: negative${bank - 1}.stud, to: negative${bank}.stud, lengthFt: 30, gauge: 2 });`,
    );
  }
  return lines;
}
