import { expect, test } from "vitest";
import { createRefresher, type Kind } from "./refresher.ts";

function setUp() {
  const sent: Kind[] = [];
  const versions = new Map([["van.ts", 1]]);
  const refresher = createRefresher({
    versionOf: (file) => versions.get(file) ?? null,
    send: (kind) => sent.push(kind),
  });
  const arrive = async () => {
    refresher.arrived(() => true);
    await Promise.resolve();
  };
  return { refresher, sent, versions, arrive };
}

test("hints are asked for again only when they would read differently", async () => {
  const { refresher, sent, arrive } = setUp();
  let hint = "2.68 % drop";
  refresher.answered("hints", "van.ts", 1, () => hint);
  await arrive();
  expect(sent).toEqual([]);
  hint = "3.1 % drop";
  await arrive();
  expect(sent).toEqual(["hints"]);
});

test("not for a file that was typed in since: the editor asks for that itself", async () => {
  const { refresher, sent, versions, arrive } = setUp();
  let hint = "2.68 % drop";
  refresher.answered("hints", "van.ts", 1, () => hint);
  versions.set("van.ts", 2);
  hint = "3.1 % drop";
  await arrive();
  expect(sent).toEqual([]);
});

test("not for a file that was closed", async () => {
  const { refresher, sent, versions, arrive } = setUp();
  let hint = "2.68 % drop";
  refresher.answered("hints", "van.ts", 1, () => hint);
  versions.delete("van.ts");
  hint = "3.1 % drop";
  await arrive();
  expect(sent).toEqual([]);
});

test("once for all files", async () => {
  const { refresher, sent, versions, arrive } = setUp();
  versions.set("boat.ts", 1);
  let hint = "old";
  refresher.answered("hints", "van.ts", 1, () => hint);
  refresher.answered("hints", "boat.ts", 1, () => hint);
  refresher.answered("lenses", "van.ts", 1, () => hint);
  hint = "new";
  await arrive();
  expect(sent.sort()).toEqual(["hints", "lenses"]);
});
