/**
 * Temperature of a conductor that carries a steady current.
 *
 *     T = Ta + (Tr − Ta) · (I / I_max)²
 *
 * Ta ambient, Tr rating of the insulation (the table's column), T temperature of the conductor, °C;
 * I current, I_max ampacity at Ta, A. The heat is proportional to I² and the rise to the heat, and at I_max the rise is
 * Tr − Ta: the meaning of an ampacity, as in IEC 60287-1-1, 1.4 (from memory), losses in the insulation left out.
 * FAA AC 43.13-1B, 11-67 has the square root of the ratio instead, deliberately too warm below full load.
 * Valid up to I_max; above it the true temperature is higher, as the warmer copper makes more heat.
 */
export function conductorTemperatureC(of: {
  ambientC: number;
  ratingC: number;
  currentA: number;
  ampacityA: number;
}): number {
  return of.ambientC + (of.ratingC - of.ambientC) * (of.currentA / of.ampacityA) ** 2;
}
