import type { Citation } from "./citation.ts";

const subpartI = "33 CFR 183 (Boats and Associated Equipment), Subpart I (Electrical Systems)";

/** The builds for which the subpart is law, 183.401(a): read in the document. It is taken over for all others. */
export const boundBySubpartI = "boats with petrol engines other than outboards";

/** The margin by which a protective device's rating may exceed the conductor's ampacity: here none. */
export const ratingOverConductor = {
  source: {
    document: subpartI,
    section: "183.455(c)(1)",
    authority: "regulation",
    confirmed: "read",
    note: "The regulation allows 150 % of Table 5 below 50 V. Held here to 100 % of the ampacity after all factors, which is common practice and stricter.",
  } satisfies Citation,
  heldToPercent: 100,
  allowedBelow50VPercent: 150,
} as const;

/** A protective device carries its load: its rating lies between the load and the ampacity of the conductor. */
export const ratingBetweenLoadAndConductor: Citation = {
  document: "IEC 60364-4-43 (Protection against overcurrent)",
  section: "433.1",
  edition: "2008",
  authority: "standard",
  confirmed: "read",
  note: "Read in public texts on BS 7671 433.1.1, which adopts it. Design current at most the rated current of the device, and that at most the current-carrying capacity of the conductor.",
};

/** Rating of a protective device relative to a load that runs for hours. */
export const ratingOverContinuousLoad = {
  source: {
    document: "NFPA 70 (National Electrical Code)",
    section: "210.20(A) and 215.3",
    authority: "standard",
    confirmed: "read",
    note: "Continuous means three hours or more. Written for fixed wiring of buildings; taken here as the aim for low-voltage DC.",
  } satisfies Citation,
  factor: 1.25,
} as const;

/**
 * The same in a hot place. Its source gives a range for the place of the rating, and no figure for a hotter one: the lower end is taken
 * from the temperature that 33 CFR 183 takes in engine spaces, which is our choice.
 */
export const ratingInHotPlace = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "Fuses are rated at 23 to 25 °C: they carry 70 to 80 % of their rating for hours, and less in a hotter place. Held here to 70 % from 50 °C.",
  } satisfies Citation,
  fromC: 50,
  loadPercent: 70,
} as const;

/** Every ungrounded current-carrying conductor has a fuse, or a manually reset trip-free breaker. */
export const protectionRequired: Citation = {
  document: subpartI,
  section: "183.455(a)",
  authority: "regulation",
  confirmed: "read",
};

/** The device is at the source of power of each circuit or conductor: two sources require two devices. */
export const protectionAtEachSource: Citation = {
  document: subpartI,
  section: "183.455(b)",
  authority: "regulation",
  confirmed: "read",
  note: "For conductors from a battery 183.460(a) asks the same within 72 in.",
};

/** A device's rated voltage is at least the circuit's nominal voltage. */
export const deviceVoltage: Citation = {
  document: subpartI,
  section: "183.455(d)",
  authority: "regulation",
  confirmed: "read",
};

/** A machine that does not limit itself is protected in the conductor that leaves it. */
export const protectionOfMachine = {
  source: {
    document: subpartI,
    section: "183.460(b)",
    authority: "regulation",
    confirmed: "read",
    note: `Of the machine's greatest current at 60 °C; here of its rating. Law for ${boundBySubpartI} (183.401(a)).`,
  } satisfies Citation,
  ofRatingPercent: 120,
} as const;

/** Fuses and breakers side by side: only as a unit that is made so. */
export const devicesInParallel: Citation = {
  document: "NFPA 70 (National Electrical Code)",
  section: "240.8",
  authority: "standard",
  confirmed: "memory",
  note: "Written for fixed wiring of buildings.",
};

/** A device can interrupt the maximum fault current of a short right behind it. */
export const breakingCapacity: Citation = {
  document: "IEC 60364-4-43 (Protection against overcurrent)",
  section: "434.5.1",
  edition: "2008",
  authority: "standard",
  confirmed: "read",
  note: "Read in public texts on BS 7671 434.5.1, which adopts it. It allows less behind a device with that capacity that lets through no more energy than the device and the conductor withstand. 33 CFR 183 asks for no figure.",
};

/** A device opens soon enough at the minimum fault current of a short behind it. */
export const clearingTime = {
  source: {
    document: "IEC 60364-4-41 (Protection against electric shock)",
    section: "411.3.2.3, by analogy",
    edition: "2005",
    authority: "standard",
    confirmed: "read",
    note: "Not a rule for these systems: 5 s is for distribution circuits of TN systems, and Table 41.1 asks for no disconnection against shock up to 120 V DC. Read in public texts on BS 7671, which adopts it. Heat has little time to leave the conductor until about then, the assumption of its withstand.",
  } satisfies Citation,
  maxS: 5,
} as const;

/** Maximum distance of a protective device from its source of power, along the conductor. */
export const protectionDistances = {
  bare: {
    maxIn: 7,
    source: {
      document: subpartI,
      section: "183.455(b)(1)",
      authority: "regulation",
      confirmed: "read",
      note: "The device belongs at the source; 7 in only where that is physically impractical.",
    } satisfies Citation,
  },
  sheathed: {
    maxIn: 40,
    source: {
      document: subpartI,
      section: "183.455(b)(2)",
      authority: "regulation",
      confirmed: "read",
      note: "Only where nearer is impractical, and if the conductor is in a sheath or enclosure all the way to the device.",
    } satisfies Citation,
  },
  fromBattery: {
    maxIn: 72,
    source: {
      document: subpartI,
      section: "183.460(a)",
      authority: "regulation",
      confirmed: "read",
      note: "Does not bind the main feed of an engine's cranking motor.",
    } satisfies Citation,
  },
} as const;

/** Small-craft practice is stricter than the law for bare conductors from a battery. */
export const bareFromBattery = {
  maxIn: 7,
  source: {
    document: "Private small-craft practice, not read",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "The limit of 72 in only for a conductor in a sheath or enclosure all the way to the device.",
  } satisfies Citation,
} as const;

/** Everything on a bank can be cut off from it by hand, at one place. */
export const batteryDisconnect: Citation = {
  document: "ISO 10133 (Small craft, extra-low-voltage d.c. installations)",
  section: "clause 6",
  edition: "2012",
  authority: "standard",
  confirmed: "memory",
  note: "A battery disconnect switch close to the battery, in the conductor to the supply. Devices that must run unattended are the usual exception. 33 CFR 183 asks for none.",
};

/** The same, read: a switch for everything on the batteries, and the devices that may be ahead of it. */
export const batteryMasterSwitch: Citation = {
  document: "Boat Safety Scheme (standards for non-private boats), 2002",
  section: "3.5",
  authority: "standard",
  confirmed: "read",
  note: "A switch near the battery that carries the greatest current of the system, also while the engine is started. Bilge and fire pumps, alarms and navigation equipment may be ahead of it, with protection of their own.",
};

/** Conductors of circuits of 50 V or more. */
export const conductorsFromFiftyVolts = {
  source: {
    document: subpartI,
    section: "183.435(a)",
    authority: "regulation",
    confirmed: "read",
  } satisfies Citation,
  fromV: 50,
} as const;
