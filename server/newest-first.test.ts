import { expect, test } from "vitest";
import { LSPErrorCodes } from "vscode-languageserver";
import { createNewestFirst } from "./newest-first.ts";

/** Work that ends when it is told to. */
function work(name: string, log: string[]) {
  let end = () => {};
  const ended = new Promise<void>((resolve) => {
    end = resolve;
  });
  const run = async () => {
    log.push(`${name} starts`);
    await ended;
    log.push(`${name} ends`);
    return name;
  };
  return { run, end };
}

test("of those that wait only the newest is started; the others are told so", async () => {
  const log: string[] = [];
  const [first, second, third] = ["first", "second", "third"].map((name) => work(name, log)) as [
    ReturnType<typeof work>,
    ReturnType<typeof work>,
    ReturnType<typeof work>,
  ];
  const newest = createNewestFirst();
  const answers = [first, second, third].map(({ run }) => newest.run("van", run));
  await expect(answers[1]).rejects.toMatchObject({ code: LSPErrorCodes.ServerCancelled });
  expect(log).toEqual(["first starts"]);
  first.end();
  third.end();
  expect(await Promise.all([answers[0], answers[2]])).toEqual(["first", "third"]);
  expect(log).toEqual(["first starts", "first ends", "third starts", "third ends"]);
});

test("plans do not wait for each other, and a failure holds nobody up", async () => {
  const log: string[] = [];
  const slow = work("slow", log);
  const newest = createNewestFirst();
  const waits = newest.run("van", slow.run);
  expect(await newest.run("hut", async () => "drawn")).toBe("drawn");
  slow.end();
  await waits;
  await expect(newest.run("van", () => Promise.reject(new Error("broken")))).rejects.toThrow("broken");
  expect(await newest.run("van", async () => "drawn again")).toBe("drawn again");
});

test("whoever asks while the next one is about to start still waits", async () => {
  const log: string[] = [];
  const [first, second, third] = ["first", "second", "third"].map((name) => work(name, log)) as [
    ReturnType<typeof work>,
    ReturnType<typeof work>,
    ReturnType<typeof work>,
  ];
  const newest = createNewestFirst();
  const one = newest.run("van", first.run);
  const two = newest.run("van", second.run);
  first.end();
  await one;
  const three = newest.run("van", third.run);
  second.end();
  await two;
  third.end();
  await three;
  expect(log).toEqual([
    ...["first starts", "first ends", "second starts"],
    ...["second ends", "third starts", "third ends"],
  ]);
});
