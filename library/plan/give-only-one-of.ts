/**
 * Types of properties that must not be given, because another one already says the same thing. Nothing has such a type;
 * its name is the message that the compiler prints: "Type 'number' is not assignable to type 'GiveOnlyOneOf.load_or_loadW'".
 *
 * Members of an enumeration, because these are unit types: from a property that is given, TypeScript then knows which
 * alternative the plan takes. An interface or `never` in their place costs the hover on `gauge`, `load` and every length its
 * documentation, and makes the compiler complain of alternatives that nobody took.
 */
export declare enum GiveOnlyOneOf {
  load_or_loadW_or_to = "load, loadW or to",
  gauge_or_mm2 = "gauge or mm2",
  lengthFt_or_lengthM = "lengthFt or lengthM",
  currentA_or_powerW_or_resistanceOhm = "currentA, powerW or resistanceOhm",
  on_or_off = "on or off",
  chargePercent_or_bankV = "chargePercent or bankV",
  oneWayFt_or_oneWayM_or_both_conductors = "oneWayFt, oneWayM, positiveFt + negativeFt or positiveM + negativeM",
  distanceIn_or_distanceMm = "distanceIn or distanceMm",
  endSlackIn_or_endSlackMm = "endSlackIn or endSlackMm",
}
