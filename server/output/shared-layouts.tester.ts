import { createLayouts, type Layouts } from "./layouts.ts";

const layouts = createLayouts();

/**
 * One layout thread for all commands of tests that do not test it: its start takes longer than most layouts. No command ends it; it
 * ends with the process. It keeps its latest layouts, so a test that compares two layouts of one graph needs threads of its own.
 */
export const sharedLayouts: Layouts = {
  layOut: (graph, key) => layouts.layOut(graph, key),
  dispose: async () => {},
};
