import type { BenchSettings, Spool } from "../../model/bench-settings.ts";
import type { BuildSettings } from "../../model/plan-model.ts";
import { formatExact } from "../../rules/wording/format-number.ts";
import { usualSparesInWords } from "../schedules/parts-list.ts";
import type { Property } from "./property.ts";
import { quantity, said, text } from "./property.ts";

/** Settings of a plan as a whole. Its defaults for circuits are reported at the circuits. */
export function buildProperties({ installedIn, bench }: BuildSettings): Property[] {
  return [
    ...said(installedIn, "installedIn", "kind of build"),
    ...(Object.keys(fields) as (keyof BenchSettings)[]).flatMap((field) => fields[field](bench)),
  ];
}

/** The compiler reports a new field of the model that is missing here. */
const fields: Readonly<Record<keyof BenchSettings, (bench: BenchSettings) => Property[]>> = {
  slackPercent: ({ slackPercent }) => [quantity("slackPercent", "slack when cutting", slackPercent, "%")],
  endSlackM: ({ endSlackM }) => [quantity("endSlackM", "slack at each end", endSlackM * 1000, "mm")],
  spareFuses: ({ spareFuses }) => [
    text(
      "spareFuses",
      "spare fuses of each kind",
      spareFuses === undefined ? usualSparesInWords : `${spareFuses}`,
    ),
  ],
  positiveColour: ({ positiveColour }) => said(positiveColour, "positiveColour", "colour of the positive"),
  negativeColour: ({ negativeColour }) => said(negativeColour, "negativeColour", "colour of the negative"),
  currency: ({ currency }) => (currency === "" ? [] : said(currency, "currency", "currency")),
  spools: ({ spools }) =>
    spools.length === 0 ? [] : [text("spools", "spools", spools.map(spoolInWords).join("; "))],
  wireByLength: ({ wireByLength }) =>
    said(wireByLength ? "by length" : "on spools", "wireByLength", "wire bought"),
};

function spoolInWords({ size, lengthM, colour, price }: Spool): string {
  const wire = "awg" in size ? `${size.awg} AWG` : `${size.mm2} mm²`;
  return [
    `${formatExact(lengthM)} m of ${wire}`,
    colour,
    price === undefined ? undefined : `at ${formatExact(price)}`,
  ]
    .filter((word) => word !== undefined)
    .join(" ");
}
