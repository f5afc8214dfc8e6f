import { circuit } from "loomwright";

/** A pair of work lights, as every one of our builds has them: one run, 14 AWG, 5 A. */
export function workLights(name: string, oneWayFt: number): void {
  circuit({ name, load: 3, oneWayFt, gauge: 14, protect: 5, insulationC: 105 });
}
