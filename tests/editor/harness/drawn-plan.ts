import type { ShowDiagram } from "../../../extension/diagram/messages.ts";
import { shownDiagram } from "../../../extension/diagram/shown-diagram.ts";
import type { Diagram, DiagramParams } from "../../../server/language/messages.ts";
import { type ScriptedEditor, startEditor } from "../../protocol/scripted-editor.ts";

/** A plan in the built server, to show its diagrams in a page. */
export interface DrawnPlan {
  readonly editor: ScriptedEditor;
  /** As the panel would send it, drawn once for each text, view and scenario; each has the next number. */
  diagram(shown: Omit<DiagramParams, "textDocument">): Promise<ShowDiagram>;
}

/** @param root one of the files */
export async function drawnPlan(files: Readonly<Record<string, string>>, root: string): Promise<DrawnPlan> {
  const editor = await startEditor({ files });
  editor.open(root);
  let number = 0;
  const drawn = new Map<string, Promise<Diagram>>();
  return {
    editor,
    async diagram(shown) {
      const key = JSON.stringify([shown, editor.textOf(root)]);
      const drawing = drawn.get(key) ?? editor.ask<Diagram>("loomwright/diagram", root, shown);
      drawn.set(key, drawing);
      const diagram = await drawing;
      number++;
      return shownDiagram(diagram, diagram.uri, number);
    },
  };
}
