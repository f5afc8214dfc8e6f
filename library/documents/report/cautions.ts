import type { Table } from "../table.ts";
import type { Chapter } from "./chapter.ts";

/** Cautions for everyone who works by a report. In the words of the README; a test keeps the two equal. */
export function cautionsChapter(): Chapter {
  return {
    id: "cautions",
    title: "Cautions",
    orientation: "portrait",
    blocks: [
      { kind: "paragraph", text: planningAid.join(" ") },
      { kind: "notice", title: "Before you work", lines: cautions },
      { kind: "table", table: record },
    ],
  };
}

/** For those who have seen the build, which no report has. */
const record: Table = {
  id: "record",
  title: "For the record",
  notes: [],
  columns: [
    { id: "who", title: "Who", align: "start" },
    ...[
      { id: "name", title: "Name" },
      { id: "date", title: "Date" },
      { id: "signature", title: "Signature" },
    ].map((column) => ({ ...column, align: "start", toFillIn: true }) as const),
  ],
  rows: ["Planned by", "Built by", "Inspected by"].map((who) => [who, null, null, null]),
};

export const planningAid = [
  "Loomwright is a planning aid.",
  "It does not know your boat, your vehicle or your local code, and a plan that passes is not a system that has been inspected.",
] as const;

export const cautions = [
  "A battery can deliver thousands of amperes into a short. Disconnect it before you work, cover its terminals, take off rings and watches.",
  "Local codes and the makers' instructions rule. If they require more than Loomwright does, follow them.",
  "Mains voltage, shore power, gas and fuel spaces belong to licensed people.",
  "Measure when it is built: polarity and insulation before the main fuse goes in, then the voltage at each device under load, and the warmth of each connection after an hour.",
] as const;
