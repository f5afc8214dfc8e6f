/** One promise of the README, tried in the extension host through the editor's own interface. */
export interface Story {
  readonly name: string;
  /** Throws if the promise is not kept. */
  run(): Promise<void>;
}

/** The suite's output for the harness, one line of JSON for each story. */
export interface StoryResult {
  readonly story: string;
  readonly milliseconds: number;
  /** Absent: it passed. */
  readonly failure?: string;
}

/** Before each line with a result, to distinguish it from other output. */
export const resultMark = "LOOMWRIGHT-STORY ";

/** Before each line with a measured figure, e.g. the time of activation. */
export const figureMark = "LOOMWRIGHT-FIGURE ";
