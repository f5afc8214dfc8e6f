import { conductorOf, partsByRecord } from "../../analysis/placement/bodies.ts";
import { bendByDiameter, bendingSpace } from "../../standards/placement-bending-space.ts";
import { bodyInWords, distinctOnSurface, type OfFault, perBodyFault } from "../board.ts";
import { moveFixes } from "../fixes/moved-body.ts";
import { sizeInWords } from "../fixes/sized-fix.ts";
import { defineRule } from "../rule.ts";
import { terminalNameInWords } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const lugRoom = defineRule<Values>({
  id: "placement/lug-room",
  title: "No room to bend before a terminal",
  severity: "warning",
  why: "A thick conductor that is bent hard at its lug pulls on the stud, works loose, and heats the joint.",
  sources: [bendingSpace.source, bendByDiameter.source],
  fixable: true,
  acceptable: true,
  // Needs the place of the terminal, the side towards which a conductor leaves it, and the size of the conductor.
  check: (plan) =>
    perBodyFault(plan, "lug room", ({ fault, body, surface, facts }) => {
      const { layout } = facts;
      const [is, needs] = distinctOnSurface(body, fault.isMm, fault.needsMm);
      const lead = layout.leads[fault.lead]!;
      const conductor = conductorOf(facts, lead)!;
      const part = plan.network && partsByRecord(plan.network.network).get(body.record);
      const { obstacle } = fault;
      return {
        ofRecord: lead.record,
        related: [{ at: { record: lead.record, path: [] }, text: lead.name }],
        values: {
          is,
          needs,
          terminal: part ? terminalNameInWords(part, fault.terminal) : fault.terminal,
          upTo:
            obstacle.kind === "body"
              ? bodyInWords(plan, obstacle.body)
              : obstacle.kind === "edge"
                ? `the edge of ${surface.name}`
                : (surface.keepFree[obstacle.area]?.name ?? ""),
          size: sizeInWords(conductor),
          name: lead.name,
          source: sourceInWords(fault.byDiameter ? bendByDiameter.source : bendingSpace.source),
        },
      };
    }),
  whenAsked: moveFixes,
  message: ({ is, needs, terminal, upTo, size, name, source }) =>
    `${is} before ${terminal}, up to ${upTo}; ${size} of ${name} needs ${needs} beyond its lug to bend (${source}). Move or turn one of them.`,
});

interface Values extends OfFault {
  readonly is: string;
  readonly needs: string;
  /** "the positive terminal" */
  readonly terminal: string;
  readonly upTo: string;
  readonly size: string;
  readonly name: string;
  readonly source: string;
}
