import type { FrameLocator, Locator, Page } from "playwright-core";

/** The inside of the panel with the diagram: a page in a frame in a frame. */
export function diagramIn(page: Page): FrameLocator {
  return page.frameLocator("iframe.webview.ready").frameLocator("iframe#active-frame");
}

/** The element of the picture with this name; if a part, a conductor and a fuse share it, the part. */
export function elementIn(diagram: FrameLocator, name: string): Locator {
  return diagram.locator(`#stage g[data-element=${JSON.stringify(`part:${encodeURIComponent(name)}`)}]`);
}
