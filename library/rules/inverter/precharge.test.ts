import { testRule } from "../rule.tester.ts";
import { inverterPrecharge } from "./precharge.ts";

// Common practice, no source: from about 2 kW at 48 V.
testRule(inverterPrecharge, [
  {
    name: "2 kW at 48 V",
    plan: planWith(),
    finds: [
      {
        subject: "shop",
        record: "shop",
        on: "continuousW",
        severity: "info",
        message:
          "An inverter of 2,000 W on 48 V takes a large inrush when it is connected (common practice, no source): charge its capacitors through a resistor first, if it does not do so itself.",
        fixes: "no fix",
      },
    ],
  },
  { name: "a little less", plan: planWith({ continuousW: 1_990 }), finds: "nothing" },
  { name: "24 V", plan: planWith({ batteries: 2 }), finds: "nothing" },
  {
    name: "accepted with a reason",
    plan: planWith({ more: 'accept: { "inverter/precharge": "its switch has a position for it" }' }),
    finds: [
      {
        on: "continuousW",
        message: "An inverter of 2,000 W",
        accepted: "its switch has a position for it",
        fixes: "no fix",
      },
    ],
  },
]);

function planWith({ continuousW = 2_000, batteries = 4, more = "" } = {}): string {
  const each = Array.from({ length: batteries }, (_, index) => index);
  return `
    build({ insulationC: 105, voltage: ${12 * batteries} });
    ${each.map((index) => `const b${index} = battery({ chemistry: "AGM", nominalV: 12, capacityAh: 200, internalMilliohm: 3 });`).join("\n")}
    ${each
      .slice(1)
      .map(
        (index) =>
          `cable({ name: "link ${index}", from: b${index - 1}.positive, to: b${index}.negative, lengthFt: 1, gauge: "1/0" });`,
      )
      .join("\n")}
    const shop = inverter({ continuousW: ${continuousW}, ${more} });
    circuit({ name: "supply", from: b${batteries - 1}.positive, returnTo: b0.negative, to: shop, oneWayFt: 4, gauge: "1/0", protect: 150 });`;
}
