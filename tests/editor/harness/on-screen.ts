import type { Locator, Page } from "playwright-core";

/** A line of the editor with this text. The editor draws non-breaking spaces; here an ordinary one matches any. */
export function line(page: Page, text: string): Locator {
  return page.locator(".view-line", { hasText: withAnySpace(text) }).first();
}

/** A value on a line, as the editor colours it: a separate span. */
export function valueOn(page: Page, lineText: string, value: string): Locator {
  return line(page, lineText).getByText(value, { exact: true }).first();
}

/** An item of the status bar with this text. */
export function statusItem(page: Page, text: string): Locator {
  return page.locator(".statusbar-item", { hasText: withAnySpace(text) });
}

/**
 * Opens the light bulb's menu on a value and waits for an item. Tries again while it is missing: the editor drops the answer when
 * any extension registers in the meantime, as TypeScript's does during its start.
 */
export async function openQuickFixes(page: Page, value: Locator, item: RegExp): Promise<void> {
  await value.click();
  const wanted = page.locator(".action-widget").getByText(item).first();
  for (let tries = 0; tries < 10; tries++) {
    await page.keyboard.press("Control+.");
    if (await shows(wanted, 2_000)) return;
    await page.keyboard.press("Escape");
  }
  throw new Error(`the light bulb does not offer ${item}`);
}

/**
 * Runs a command as a person does. Tries again while it is not offered: the palette knows our commands only once the editor has
 * read the installed extensions, and closes when something else takes the focus while the window is still being filled.
 */
export async function runFromPalette(page: Page, title: string): Promise<void> {
  const input = page.locator(".quick-input-widget input[type=text]").first();
  const command = page.locator(".quick-input-list .monaco-list-row", { hasText: title }).first();
  for (let tries = 0; tries < 30; tries++) {
    await page.keyboard.press("F1");
    const typed = input.fill(`>${title}`, { timeout: 1_000 }).then(
      () => true,
      () => false,
    );
    if ((await typed) && (await shows(command, 1_000))) {
      await page.keyboard.press("Enter");
      return;
    }
    await page.keyboard.press("Escape");
  }
  throw new Error(`the palette does not offer "${title}"`);
}

/** Takes a line of the quick pick with this title. A click may be taken although the line is gone before the click is reported. */
export async function pick(page: Page, title: string, label: string): Promise<void> {
  const widget = page.locator(".quick-input-widget", { hasText: title });
  const row = page.locator(".quick-input-list .monaco-list-row", { hasText: label });
  await widget.waitFor();
  for (let tries = 0; tries < 5; tries++) {
    const isClicked = await row.click({ timeout: 5_000 }).then(
      () => true,
      () => false,
    );
    if (isClicked || !(await widget.isVisible())) return;
  }
  throw new Error(`"${label}" cannot be picked from "${title}"`);
}

/** Whether it appears, or goes, within the time, ms. */
export function shows(
  locator: Locator,
  timeout: number,
  state: "visible" | "detached" = "visible",
): Promise<boolean> {
  return locator.waitFor({ timeout, state }).then(
    () => true,
    () => false,
  );
}

function withAnySpace(text: string): RegExp {
  return new RegExp(text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&").replaceAll(" ", "\\s"));
}
