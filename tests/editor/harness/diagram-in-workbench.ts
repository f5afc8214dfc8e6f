import type { FrameLocator, Locator, Page } from "playwright-core";

/** The inside of the panel with the diagram: a page in a frame in a frame. */
export function diagramIn(page: Page): FrameLocator {
  return page.frameLocator("iframe.webview.ready").frameLocator("iframe#active-frame");
}

/** The part of the picture that has this name; where a part, a conductor and a fuse share one, the part. */
export function elementIn(diagram: FrameLocator, name: string): Locator {
  return diagram.locator(`#stage g[data-element=${JSON.stringify(`part:${encodeURIComponent(name)}`)}]`);
}
