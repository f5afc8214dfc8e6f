import type { Chapter } from "./chapter.ts";

/** What everybody who works by a report has to know. In the words of the README; a test holds the two together. */
export function cautionsChapter(): Chapter {
  return {
    id: "cautions",
    title: "Cautions",
    orientation: "portrait",
    blocks: [
      { kind: "paragraph", text: planningAid.join(" ") },
      { kind: "notice", title: "Before you work", lines: cautions },
    ],
  };
}

export const planningAid = [
  "Loomwright is a planning aid.",
  "It does not know your boat, your vehicle or your local code, and a plan that passes is not a system that has been inspected.",
] as const;

export const cautions = [
  "A battery can deliver thousands of amperes into a short. Disconnect it before you work, cover its terminals, take off rings and watches.",
  "Local codes and the makers' instructions rule. Where they ask for more than Loomwright does, do what they say.",
  "Mains voltage, shore power, gas and fuel spaces belong to licensed people.",
  "Measure when it is built: polarity and insulation before the main fuse goes in, then the voltage at each device under load, and the warmth of each connection after an hour.",
] as const;
