import { type WrongOrder, wrongOrders } from "../../analysis/opening-order.ts";
import { timeCurrentGates } from "../../standards/time-current-gates.ts";
import { type Device, theDevice } from "../fixes/judged-devices.ts";
import { placedDevice, placedInWords, relatedDevice } from "../fixes/placed-device.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { withUnit } from "../wording/format-number.ts";
import { unconfirmedAmong } from "../wording/source-in-words.ts";

export const protectionSelectivity = defineRule<Values>({
  id: "protection/selectivity",
  title: "Upstream device may open first",
  formerTitles: ["The fuse before it may open first"],
  severity: "info",
  why: "If the upstream fuse opens instead of the one at the short, everything else that it feeds goes dark too.",
  sources: [
    ownRequirement(
      "By common practice in every installation only the device nearest to a fault opens; no law for low-voltage DC requires it.",
    ),
    ...timeCurrentGates.map(({ source }) => source),
  ],
  fixable: false,
  acceptable: true,
  ignoresLoads: "entirely",
  // Needs the order in which devices open. Advice only: it is no fire hazard.
  check: (plan) =>
    inNetwork(plan, (judged) =>
      wrongOrders(judged).flatMap((order) => {
        const upstream = placedDevice(judged.network, order.upstream);
        const downstream = placedDevice(judged.network, order.downstream);
        if (!upstream || !downstream) return [];
        const values: Values = {
          device: downstream.device,
          before: placedInWords(upstream),
          order,
        };
        return [
          {
            subject: downstream.subject,
            at: downstream.at,
            values,
            related: [relatedDevice(upstream)],
          },
        ];
      }),
    ),
  message({ device, before, order }) {
    const when = order.gates.length > 0 ? `before it${unconfirmedAmong(order.gates)}` : "as soon";
    const behind = `In a short of ${withUnit(order.currentA, "A")} behind ${theDevice(device).replace("The", "the")}`;
    return `${behind}, ${before} may open ${when}, and everything else it feeds goes dark: choose the ratings further apart.`;
  },
});

interface Values {
  readonly device: Device;
  /** "the 60 A fuse in the cable feed" */
  readonly before: string;
  readonly order: WrongOrder;
}
