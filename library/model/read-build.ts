import { systemVoltageFor } from "./battery-figures.ts";
import { benchOf, defaultBench } from "./bench-settings.ts";
import { type BuildValues, buildProperties } from "./build-properties.ts";
import { displayName } from "./display-name.ts";
import type { BuildSettings } from "./plan-model.ts";
import type { ReadBuild } from "./read-circuit.ts";
import { readValues } from "./read-values.ts";
import type { PlanRecord } from "./record.ts";
import type { InvalidValue } from "./run.ts";

/** Its name in findings, regardless of its own name: a plan has one build. */
const name = "the build";

/** Reads the calls of `build`: the first one applies, and any other is refused. */
export function readBuild(records: readonly PlanRecord[]): ReadBuild & {
  readonly settings: BuildSettings;
  readonly invalid: readonly InvalidValue[];
} {
  const record = records.findIndex(({ word }) => word === "build");
  if (record === -1)
    return {
      settings: { voltageStated: false, bench: defaultBench },
      values: {},
      missed: new Set(),
      invalid: [],
    };
  const first = readValues(records[record]?.input, buildProperties);
  const invalid: InvalidValue[] = first.invalid.map((refusal) => ({ record, name, ...refusal }));
  const missed = new Set(first.unusable);
  records.forEach(({ word, input }, index) => {
    if (word !== "build" || index === record) return;
    const other = readValues(input, buildProperties);
    invalid.push({
      record: index,
      path: [],
      name,
      given: undefined,
      wrong: "build is called a second time",
      allowed: "one call of build in a plan",
    });
    // The intended one is unknown: properties that differ between them apply to no circuit.
    for (const property of other.unusable) missed.add(property);
    for (const property of settable)
      if (other.values[property] !== undefined && other.values[property] !== first.values[property])
        missed.add(property);
  });
  const shown = displayName(first.values.name ?? "");
  return {
    settings: {
      record,
      voltageStated: first.values.voltage !== undefined,
      bench: benchOf(first.values),
      ...(first.values.installedIn !== undefined && { installedIn: first.values.installedIn }),
      ...(shown && { name: shown }),
      ...(first.values.bundledInChannels && { bundledInChannels: true as const }),
    },
    values: withSystemVoltage(first.values),
    missed,
    invalid,
  };
}

/** The label of a battery is not the nominal voltage of its system. */
function withSystemVoltage(values: BuildValues): BuildValues {
  const { voltage } = values;
  if (voltage === undefined || systemVoltageFor(voltage) === voltage) return values;
  return { ...values, voltage: systemVoltageFor(voltage) };
}

/** All properties except those that serve lists, or lengths along ways: no figure is a default of theirs. */
const settable = [...buildProperties.properties].flatMap(([name, { serves }]) =>
  serves ? [] : [name as keyof BuildValues],
);
