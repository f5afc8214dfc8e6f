import type { MotorPart } from "../model/motor-starts.ts";
import { isStarterMotor } from "../model/part-roles.ts";
import { cranking, motorStart } from "../standards/device-practice.ts";

/** The time that a motor needs to start, s: as the plan states it, else the usual one. */
export function startTimeS(motor: MotorPart): number {
  return motor.draws.startingS ?? (isStarterMotor(motor) ? cranking : motorStart).seconds;
}
