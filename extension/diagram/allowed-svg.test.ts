import { expect, test } from "vitest";
import { attributeIs, elementIs } from "./allowed-svg.ts";

test.each(["svg", "g", "path", "text", "tspan", "title", "defs", "pattern"])(
  "a picture may have a <%s>",
  (name) => {
    expect(elementIs(name)).toBe("taken");
  },
);

test("what other programs read beside it is left out", () => {
  expect(elementIs("metadata")).toBe("left out");
});

test.each([
  ...["script", "foreignObject", "a", "image", "use", "style", "animate", "set", "iframe", "handler"],
  ...["filter", "feImage", "mask", "switch", "SCRIPT", "Svg", "constructor", "__proto__"],
])("a <%s> is refused", (name) => {
  expect(elementIs(name)).toBe("refused");
});

test.each([
  ["d", "M 0 0 L 10.5 -3 H 7 v 2e1 A 3,3 0 0 1 5,5 Z"],
  ["transform", "translate(10, 20) rotate(-90)"],
  ["stroke", "var(--wire)"],
  ["stroke", "var(--wire, currentColor)"],
  ["fill", "none"],
  ["fill", "#fff"],
  ["fill", "url(#loomwright-fill-dotted)"],
  ["id", "loomwright-fill-dotted"],
  ["font-family", "'DejaVu Sans', Verdana, sans-serif"],
  ["class", "part severity-error"],
  ["data-element", "<script>alert(1)</script>"],
])("%s=%j is taken", (name, value) => {
  expect(attributeIs(name, value)).toBe("taken");
});

test.each([
  ["onload", "alert(1)"],
  ["onclick", ""],
  ["style", "background: url(http://127.0.0.1/)"],
  ["href", "#here"],
  ["xlink:href", "#here"],
  ["src", "x"],
  ["fill", "url(#paint)"],
  ["fill", "url(#loomwright-fill-dotted) url(x)"],
  ["fill", "url(x#loomwright-fill-dotted)"],
  ["fill", "url(http://127.0.0.1/x.svg#p)"],
  ["stroke", "var(--a, url(http://127.0.0.1/))"],
  ["transform", "translate(1) url(x)"],
  ["d", "M0 0;background:red"],
  ["class", "a;b{}"],
  ["filter", "blur(3px)"],
  ["clip-path", "url(#a)"],
  ["width", "calc(1px)"],
  ["data-other", "x"],
  ["constructor", "x"],
])("%s=%j is refused", (name, value) => {
  expect(attributeIs(name, value)).toBe("refused");
});

test.each(["id", "role", "aria-label", "tabindex", "xmlns"])("%s is the page's own business", (name) => {
  expect(attributeIs(name, "x")).toBe("left out");
});
