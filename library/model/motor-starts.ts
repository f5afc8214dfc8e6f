import { displayName } from "./display-name.ts";
import type { LoadPart, Part, Scenario } from "./network.ts";
import { isCharging, isConsumer } from "./part-roles.ts";
import type { StatedScenario } from "./switch-positions.ts";

/** A motor, as a part. */
export type MotorPart = LoadPart & { readonly draws: { readonly as: "motor" } };

export function isMotor(part: Part): part is MotorPart {
  return part.kind === "load" && part.draws.as === "motor";
}

/**
 * A further scenario for the start of each motor that no scenario starts: it starts while all else goes on as in the scenario that is
 * the worst for it, with as few charging sources as there are in one. An engine's starter, and a motor that is on in none, start alone
 * on the batteries.
 *
 * Each scenario costs a solution of the whole network: no more than {@link mostStarts} are added.
 */
export function motorStarts(
  parts: readonly Part[],
  stated: readonly StatedScenario[],
): readonly StatedScenario[] {
  const untried = parts.filter(
    (part): part is MotorPart =>
      isMotor(part) &&
      part.draws.startingA > part.draws.runningA &&
      !stated.some(({ scenario }) => scenario.starting[part.index]),
  );
  return worstFirst(untried)
    .slice(0, mostStarts)
    .flatMap((motor) => {
      const base = worstWith(motor, parts, stated);
      if (base) return [starting(motor, base)];
      const [any] = stated;
      return any ? [starting(motor, aloneIn(any, motor, parts))] : [];
    });
}

/** Our choice: few builds have more motors. Of many, those that need a voltage and draw the most come first. */
const mostStarts = 8;

function worstFirst(motors: readonly MotorPart[]): readonly MotorPart[] {
  const needsVoltage = ({ minimumV }: MotorPart) => Number(minimumV !== undefined);
  return [...motors].sort(
    (one, other) => needsVoltage(other) - needsVoltage(one) || other.draws.startingA - one.draws.startingA,
  );
}

/** Of the lasting scenarios in which a motor runs: with the fewest charging sources, then with the lowest batteries, then with most on. */
function worstWith(
  motor: MotorPart,
  parts: readonly Part[],
  stated: readonly StatedScenario[],
): StatedScenario | undefined {
  if (motor.statedBy === "starterMotor") return undefined;
  const ranked = stated.flatMap((one) => {
    const { on, restV, momentary } = one.scenario;
    if (momentary || !on[motor.index]) return [];
    const charging = parts.filter((part) => isCharging(part) && on[part.index]).length;
    return [
      {
        one,
        charging,
        restV: restV.reduce<number>((sumV, volts) => sumV + (volts ?? 0), 0),
        on: on.filter(Boolean).length,
      },
    ];
  });
  ranked.sort((a, b) => a.charging - b.charging || a.restV - b.restV || b.on - a.on);
  return ranked[0]?.one;
}

function aloneIn(
  { scenario, named }: StatedScenario,
  motor: MotorPart,
  parts: readonly Part[],
): StatedScenario {
  const on = parts.map((part) =>
    isConsumer(part) ? part === motor : !isCharging(part) && scenario.on[part.index]!,
  );
  return { named, scenario: { ...scenario, on, sunShare: 0, name: "" } };
}

function starting(motor: MotorPart, { scenario, named }: StatedScenario): StatedScenario {
  const { record: _, ...base } = scenario;
  const further: Scenario = {
    ...base,
    name: displayName(
      scenario.name ? `${scenario.name}, ${motor.name} starting` : `${motor.name} starting alone`,
    ),
    starting: scenario.on.map((_, part) => part === motor.index),
    momentary: true,
    furtherStart: true,
  };
  return { named, scenario: further };
}
