import * as vscode from "vscode";
import {
  eventually,
  inWorkspace,
  openPlan,
  replaceText,
  underlined,
  untilUnderlined,
} from "./plan-in-editor.ts";
import type { Story } from "./story.ts";

const root = `import { circuit } from "loomwright";
import { farFt } from "./lengths.ts";

circuit({ name: "heater", load: 15, oneWayFt: farFt, gauge: 14, protect: 20, insulationC: 105 });
`;

export const severalFiles: readonly Story[] = [
  {
    name: "checks a plan again when a file that it imports is edited, saved or not",
    async run() {
      const lengths = await openPlan("several/lengths.ts", "export const farFt = 4;\n");
      const plan = await openPlan("several/plan.ts", root);
      await untilUnderlined(plan, []);
      await replaceText(lengths, "4", "40");
      await untilUnderlined(plan, ["conductor/voltage-drop on 14"]);
      await replaceText(lengths, "40", "3");
      await untilUnderlined(plan, []);
    },
  },
  {
    name: "checks a plan again when a file that it imports changes on disk, goes, and comes back",
    async run() {
      const lengths = inWorkspace("on-disk/lengths.ts");
      const write = (text: string) => vscode.workspace.fs.writeFile(lengths, new TextEncoder().encode(text));
      await write("export const farFt = 4;\n");
      const plan = await openPlan("on-disk/plan.ts", root);
      await untilUnderlined(plan, []);
      await write("export const farFt = 40;\n");
      await untilUnderlined(plan, ["conductor/voltage-drop on 14"]);
      await vscode.workspace.fs.delete(lengths);
      await eventually(
        "the missing file is reported on its import",
        () => underlined(plan),
        (found) =>
          found.some((finding) => finding.startsWith("plan/cannot-run") && finding.includes("./lengths.ts")),
      );
      await write("export const farFt = 4;\n");
      await untilUnderlined(plan, []);
    },
  },
  {
    name: "does not mix two plans of one workspace",
    async run() {
      const one = await openPlan("two/one.ts", root.replace("./lengths.ts", "./one-lengths.ts"));
      await openPlan("two/one-lengths.ts", "export const farFt = 40;\n");
      const other = await openPlan("two/other.ts", root.replace("./lengths.ts", "./other-lengths.ts"));
      await openPlan("two/other-lengths.ts", "export const farFt = 4;\n");
      await untilUnderlined(one, ["conductor/voltage-drop on 14"]);
      await untilUnderlined(other, []);
    },
  },
];
