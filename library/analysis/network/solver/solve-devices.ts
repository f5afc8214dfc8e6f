/**
 * The current of each kind of device at a voltage. The same equations, written as text, go to the external simulator that
 * checks the solver; no other part of the solver does.
 *
 * A device sees the voltage U between its positive and its negative terminal and draws I at the positive one; sources
 * draw a negative I. Each function writes I and its slope dI/dU into `flow`. They are called for each device in each
 * iteration, and a new object each time would cost more than the arithmetic.
 */
export interface Flow {
  currentA: number;
  /** dI/dU, S. Negative for a constant power. */
  siemens: number;
}

/** The voltage drop of a regulated source from no load to its limit, relative: 0.1 % (our choice; 14 mV at 14.4 V). */
export const regulationShare = 0.001;

/** Below this, electronics do not run: a constant current becomes a resistance, a constant power is off. V, our choice. */
export const leastRunningV = 1;

/**
 *     I = (U − E) / R     E voltage at rest, V; R internal resistance, Ω
 *
 * Takes U − E: the caller forms it without losing digits, as a resistance of micro-ohms leaves it small.
 */
export function battery(of: { ohm: number }, aboveRestV: number, flow: Flow): void {
  flow.siemens = 1 / of.ohm;
  flow.currentA = aboveRestV / of.ohm;
}

/**
 *     I = I0 · U / 1 V  for |U| < 1 V,  else ± I0     I0 the stated current, A
 *
 * The sign is that of U: a device connected with reversed polarity draws as well and never feeds.
 */
export function constantCurrent(of: { currentA: number }, voltageV: number, flow: Flow): void {
  const saturated = Math.abs(voltageV) >= leastRunningV;
  flow.siemens = saturated ? 0 : of.currentA / leastRunningV;
  flow.currentA = saturated ? Math.sign(voltageV) * of.currentA : flow.siemens * voltageV;
}

/**     I = P / U     P power, W */
export function constantPower(powerW: number, voltageV: number, flow: Flow): void {
  flow.currentA = powerW / voltageV;
  flow.siemens = -flow.currentA / voltageV;
}

/**
 * Alternators, shore chargers, outputs of chargers and controllers.
 *
 *     −I = (V0 − U) / r, but not below 0 and not above I_max     r = 0.001 · V0 / I_max
 *
 * V0 the voltage that it holds, V; I_max its limit, A. Above V0 it gives no current; at its limit, I_max at any voltage.
 */
export function limitedSource(of: LimitedSource, voltageV: number, flow: Flow): void {
  const siemens = of.limitA / (regulationShare * of.outputV);
  const givenA = siemens * (of.outputV - voltageV);
  const regulates = givenA > 0 && givenA < of.limitA;
  flow.siemens = regulates ? siemens : 0;
  flow.currentA = regulates ? -givenA : givenA > 0 ? -of.limitA : 0;
}

export interface LimitedSource {
  readonly outputV: number;
  readonly limitA: number;
}

/**
 * Solar modules: straight lines through the short circuit, the corner and the open circuit.
 *
 *     −I = I_sc − (I_sc − I_mp) · U / V_mp         up to V_mp
 *     −I = I_mp · (V_oc − U) / (V_oc − V_mp)       above; a module that is pushed beyond its open circuit takes current
 *
 * All currents are scaled by the share of full sun. With a tracking controller I_mp is the current at maximum power and the
 * controller keeps the modules at that corner. With one that does not track, the current falls only to 0.99 of I_sc there.
 */
export function solarArray(of: ArrayCurve, voltageV: number, flow: Flow): void {
  if (voltageV <= of.cornerV) {
    flow.siemens = (of.shortCircuitA - of.cornerA) / of.cornerV;
    flow.currentA = flow.siemens * voltageV - of.shortCircuitA;
  } else {
    flow.siemens = of.cornerA / (of.openCircuitV - of.cornerV);
    flow.currentA = -flow.siemens * (of.openCircuitV - voltageV);
  }
}

export interface ArrayCurve {
  readonly shortCircuitA: number;
  readonly cornerV: number;
  readonly cornerA: number;
  readonly openCircuitV: number;
}

/** The input and output currents of a device with both, and the four slopes. */
export interface ConverterFlow {
  inputA: number;
  outputA: number;
  inputByInputV: number;
  inputByOutputV: number;
  outputByInputV: number;
  outputByOutputV: number;
}

/** All zeros: the solver's loops reuse one object instead of making new ones. */
export function emptyConverterFlow(): ConverterFlow {
  return {
    inputA: 0,
    outputA: 0,
    inputByInputV: 0,
    inputByOutputV: 0,
    outputByInputV: 0,
    outputByOutputV: 0,
  };
}

/**
 * Chargers between two systems, and tracking solar controllers.
 *
 *     I_out = least of: the limited source's current at U_out;  η · U_in · I_in,max / U_out
 *     I_in = share · U_out · I_out / (η · U_in)
 *
 * With a U_low, both currents are those of U_in = U_low wherever U_in is above it.
 *
 * η efficiency; I_in,max the maximum input current: as stated for a charger (infinite if not stated), the modules' current at
 * maximum power for a controller. `share` is 1 except in the search for the loadability limit.
 */
export function converter(
  of: ConverterLaw,
  at: { inputV: number; outputV: number; share: number },
  flow: ConverterFlow,
  scratch: Flow,
): void {
  const { inputV, share } = at;
  const isHeldLow = of.lowInputV !== undefined && inputV > of.lowInputV;
  const drawsAtV = isHeldLow ? of.lowInputV! : inputV;
  limitedSource(of, at.outputV, scratch);
  let outputA = -scratch.currentA;
  let outputByInputV = 0;
  let outputByOutputV = -scratch.siemens;
  const mostW = of.efficiency * Math.max(0, drawsAtV) * of.inputMaxA;
  if (at.outputV > 0 && mostW < outputA * at.outputV) {
    outputA = mostW / at.outputV;
    outputByInputV = inputV > 0 && !isHeldLow ? (of.efficiency * of.inputMaxA) / at.outputV : 0;
    outputByOutputV = -outputA / at.outputV;
  }
  const outputV = Math.max(0, at.outputV);
  const perOutputW = inputV > 0 ? share / (of.efficiency * drawsAtV) : 0;
  flow.outputA = outputA;
  flow.outputByInputV = outputByInputV;
  flow.outputByOutputV = outputByOutputV;
  flow.inputA = perOutputW * outputV * outputA;
  const byInputV = isHeldLow ? 0 : flow.inputA / inputV;
  flow.inputByInputV = inputV > 0 ? perOutputW * outputV * outputByInputV - byInputV : 0;
  flow.inputByOutputV = outputV > 0 ? perOutputW * (outputA + outputV * outputByOutputV) : 0;
}

export interface ConverterLaw extends LimitedSource {
  /** 0 to 1. */
  readonly efficiency: number;
  readonly inputMaxA: number;
  /** It draws at its input as if the voltage there were no higher than this, V. */
  readonly lowInputV?: number;
}

/**
 * Solar controllers that do not track: the input current is the output current.
 *
 *     I_in = I_out = least of: (U_in − U_out) / r;  the limited source's current at U_out;  not below 0
 */
export function passingController(
  of: LimitedSource,
  at: { inputV: number; outputV: number },
  flow: ConverterFlow,
  scratch: Flow,
): void {
  limitedSource(of, at.outputV, scratch);
  const siemens = of.limitA / (regulationShare * of.outputV);
  const throughA = Math.max(0, siemens * (at.inputV - at.outputV));
  const through = throughA < -scratch.currentA;
  const slope = through && throughA > 0 ? siemens : 0;
  flow.inputA = through ? throughA : -scratch.currentA;
  flow.outputA = flow.inputA;
  flow.inputByInputV = slope;
  flow.outputByInputV = slope;
  flow.inputByOutputV = through ? -slope : -scratch.siemens;
  flow.outputByOutputV = flow.inputByOutputV;
}
