/**
 * Types of properties that must not be given, because another one already states the same. No value has such a type; its
 * name is the message that the compiler prints: "Type 'number' is not assignable to type 'GiveOnlyOneOf.load_or_loadW'".
 *
 * They are members of an enumeration, because these are unit types: from a given property, TypeScript then knows which
 * alternative the plan takes. With an interface or `never` instead, the hover on `gauge`, `load` and every length would lose
 * its documentation, and the compiler would report alternatives that the plan does not use.
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
  place_or_latitudeDeg_and_longitudeDeg = "place or latitudeDeg + longitudeDeg",
  months_or_fromDay_and_untilDay = "months or fromDay + untilDay",
  millimetres_or_inches = "millimetres or inches",
  on_or_endOf = "on or endOf",
  on_or_from = "on + path or from + a length",
  beyondM_or_beyondFt = "beyondM or beyondFt",
  endSlackIn_or_endSlackMm = "endSlackIn or endSlackMm",
}
