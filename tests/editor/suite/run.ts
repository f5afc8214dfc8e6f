import { stories } from "./stories.ts";
import { resultMark, type StoryResult } from "./story.ts";

/**
 * Called by the editor. Every story is run and reported, even after a failure; the editor's exit code states whether any failed.
 */
export async function run(): Promise<void> {
  const results: StoryResult[] = [];
  for (const story of stories) {
    const start = performance.now();
    const failure = await story.run().then(
      () => undefined,
      (error: unknown) => (error instanceof Error ? (error.stack ?? error.message) : String(error)),
    );
    const result: StoryResult = {
      story: story.name,
      milliseconds: Math.round(performance.now() - start),
      ...(failure === undefined ? {} : { failure }),
    };
    results.push(result);
    console.log(resultMark + JSON.stringify(result));
  }
  const failed = results.filter(({ failure }) => failure !== undefined);
  if (failed.length > 0) {
    throw new Error(failed.map(({ story, failure }) => `${story}\n${failure}`).join("\n\n"));
  }
}
