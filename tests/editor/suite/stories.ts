import { activation } from "./activation.ts";
import { commands } from "./commands.ts";
import { difference } from "./difference.ts";
import { fixes } from "./fixes.ts";
import { network } from "./network.ts";
import { newBuild } from "./new-build.ts";
import { newUser } from "./new-user.ts";
import { reading } from "./reading.ts";
import { severalFiles } from "./several-files.ts";
import type { Story } from "./story.ts";
import { typing } from "./typing.ts";

/** In the order of execution: activation first, before any file has been opened. */
export const stories: readonly Story[] = [
  ...activation,
  ...reading,
  ...fixes,
  ...typing,
  ...severalFiles,
  ...network,
  ...commands,
  ...difference,
  ...newBuild,
  ...newUser,
];
