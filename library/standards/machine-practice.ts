import type { Citation } from "./citation.ts";

/* Practice with charging and converting machines. Rules of thumb, recalled; no document demands them. */

function practice(note: string): Citation {
  return {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note,
  };
}

/** A lithium battery that may cut off is not alone on an alternator. */
export const loadDumpPractice: Citation = practice(
  "An alternator that loses its battery at full current gives a voltage surge until its field has decayed. A lead-acid battery in parallel takes it; a DC-DC charger keeps the lithium battery away from it.",
);

/** The capacitors of a large inverter are charged through a resistor before its supply is closed. */
export const precharge = {
  source: practice(
    "From about 2 kW at 48 V the inrush into the input capacitors pits the contacts of a switch and stresses a fuse.",
  ),
  fromW: 2_000,
  /** Nominal, V: 15 cells of LiFePO4, the least that is called 48 V, have exactly this. */
  fromNominalV: 48,
} as const;

/** A solar controller lowers the voltage of its modules. It cannot raise it. */
export const arrayAboveBattery: Citation = practice(
  "Controllers lower the voltage; those that raise it are rare. Tracking ones need some volts above the battery to start, which their makers state.",
);

/** A converter gives its rated current, and less voltage for more. */
export const converterOutput: Citation = practice(
  "A converter holds its rated current by itself: with no battery at its output the voltage falls until its loads take no more than that.",
);

/** An inverter is chosen with a bank that holds its voltage during a surge. */
export const surgeVoltage: Citation = practice(
  "During a surge the battery's resistance and the cables lower the voltage; below its cut-off voltage the inverter switches off.",
);

/** An array of a voltage that can be dangerous can be cut off under load, near its controller. */
export const arrayIsolator = {
  source: {
    document: "IEC 60364-7-712 (Solar photovoltaic power supply systems)",
    section: "isolation on the direct-current side",
    authority: "standard",
    confirmed: "memory",
    note: "A switch between modules and converter, written for buildings.",
  } satisfies Citation,
} as const;

/** Direct voltage up to which bare live parts need no cover in a dry place. */
export const touchVoltage = {
  source: {
    document: "IEC 60364-4-41 (Protection against electric shock)",
    section: "414.4.5",
    authority: "standard",
    confirmed: "memory",
    note: "60 V ripple-free direct voltage in dry places. Up to 120 V to earth Table 41.1 asks for no disconnection in case of a fault (411.3.2, read in public texts on its national adoptions); written for buildings and taken over by analogy.",
  } satisfies Citation,
  uncoveredUpToV: 60,
} as const;

/** The rating of a switch is for hours; starts last seconds. */
export const contactsForSeconds = {
  source: practice(
    "Makers of battery switches and shunts state a further rating for seconds (cranking, intermittent): half as much again as that for hours, or more.",
  ),
  timesRating: 1.5,
} as const;

/** An inverter switches off before its bank is empty: the cut-off voltage shows the voltage that it is made for. */
export const inverterCutOff = {
  source: practice(
    "Inverters switch off at about 10.5 V for each 12 V; none does so below 60 % of the voltage it is made for.",
  ),
  leastShare: 0.6,
} as const;

/** Charge that goes round between two batteries is lost a little at each turn. */
export const chargingCircle: Citation = practice(
  "A DC-DC charger loses some percent of the energy that it passes on; two that feed each other without end empty both batteries.",
);

/** A controller without tracking connects its modules straight to the bank: they work at its voltage. */
export const arrayWithoutTracking = {
  source: practice(
    "Modules on a controller without tracking have 36 cells, some 18 V, for each 12 V of the bank; one for twice that loses about half of its power.",
  ),
  /** 36 cells have 18 V at maximum power, 1.25 times 14.4 V; at 1.5 times a third of the power is lost. */
  mostOfOutput: 1.5,
} as const;

/** Devices work down to some share of the voltage that they are made for; below half of it are those of a wide range. */
export const worksFromShare = {
  source: practice(
    "Devices work down to 70 to 90 % of their nominal voltage; below half of it only those of a wide range, such as 10 to 30 V.",
  ),
  least: 0.5,
} as const;
