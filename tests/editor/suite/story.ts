/** One promise of the README, tried in the extension host through the editor's own interface. */
export interface Story {
  readonly name: string;
  /** Throws if the promise is not kept. */
  run(): Promise<void>;
}

/** What the suite prints for the harness, one line of JSON for each story. */
export interface StoryResult {
  readonly story: string;
  readonly milliseconds: number;
  /** Absent: it passed. */
  readonly failure?: string;
}

/** Before each line that carries a result, to tell them from whatever else is printed. */
export const resultMark = "LOOMWRIGHT-STORY ";

/** Before each line that carries a measured figure, e.g. the time of activation. */
export const figureMark = "LOOMWRIGHT-FIGURE ";
