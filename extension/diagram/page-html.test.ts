import { expect, test } from "vitest";
import { pageHtml } from "./page-html.ts";

const frame = {
  nonce: "n0nce",
  source: "https://files.test",
  script: "https://files.test/a.js",
  style: "https://files.test/a.css",
};

test("everything is forbidden but the one script and the one sheet", () => {
  const policy = /Content-Security-Policy" content="([^"]*)"/.exec(pageHtml(frame))?.[1];
  expect(policy).toBe(
    "default-src 'none'; script-src 'nonce-n0nce'; style-src https://files.test; base-uri 'none'; form-action 'none'",
  );
});

test("there is nothing in the page that the policy would have to let through", () => {
  const html = pageHtml(frame);
  expect(html.match(/<script/g)).toHaveLength(1);
  expect(html).not.toMatch(/<style|\bstyle=|\bon[a-z]+=|javascript:/);
});

test("an address cannot end its attribute", () => {
  const html = pageHtml({ ...frame, script: 'https://files.test/a.js"><script>alert(1)</script>' });
  expect(html.match(/<script/g)).toHaveLength(1);
});
