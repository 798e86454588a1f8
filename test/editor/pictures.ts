/**
 * Makes the pictures of the README: the editor with findings and preview, and a published page. Each
 * is taken of a state that is waited for, so a run shows what the run before showed.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium, type Page } from "playwright-core";
import { expect, test } from "vitest";
import { findBrowser } from "../../scripts/browser.mjs";
import { start } from "./driver.ts";
import { PreviewPage } from "./previewPage.ts";

const ROOT = join(import.meta.dirname, "../..");
const PICTURES = join(ROOT, "media/pictures");
const LARGEST_BYTES = 150_000;
const QUALITY = 82;
/** The editor moves its panels and fades its lists. */
const SETTLE_MS = 1_500;
/** Nothing that blinks, and a text that fits beside its preview. */
const STILL = {
  "editor.cursorBlinking": "solid",
  "editor.wordWrap": "on",
  "editor.fontSize": 13,
  "editor.renderLineHighlight": "none",
  "editor.inlayHints.enabled": "off",
  "editor.lightbulb.enabled": "off",
  "breadcrumbs.enabled": false,
  "workbench.colorTheme": "Default Light Modern",
  "workbench.activityBar.location": "hidden",
  "window.commandCenter": false,
};

/** WebP, a quarter of the size of the same as PNG. */
async function picture(page: Page, name: string): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const shot = { format: "webp", quality: QUALITY } as const;
  const { data } = await session.send("Page.captureScreenshot", shot);
  mkdirSync(PICTURES, { recursive: true });
  const path = join(PICTURES, `${name}.webp`);
  writeFileSync(path, Buffer.from(data, "base64"));
  expect(statSync(path).size).toBeLessThan(LARGEST_BYTES);
}

test("the editor with findings, and the preview beside it", async () => {
  const editor = await start({ folder: join(ROOT, "samples/plover-faults"), settings: STILL });
  try {
    await editor.page.setViewportSize({ width: 1440, height: 880 });
    await editor.openFile("plover.md");
    await editor.command("View: Toggle Primary Side Bar Visibility");
    await editor.problems();
    await editor.goTo(118, 1);
    await editor.command("Kitquill: Open Guide Preview to the Side");
    const preview = await PreviewPage.of(editor);
    await editor.command("View: Focus First Editor Group");
    await editor.goTo(121, 1);
    await preview.shows("main", "Measure from each tab");
    await editor.eventually(
      () => editor.squiggles(),
      ({ errors, warnings }) => errors > 0 && warnings > 0,
    );
    await editor.page.waitForTimeout(SETTLE_MS);
    await picture(editor.page, "editor");
  } finally {
    await editor.close();
  }
});

test("the published page", async () => {
  const folder = mkdtempSync(join(tmpdir(), "kitquill-pictures-"));
  const browser = await chromium.launch({
    executablePath: findBrowser()!,
    args: ["--no-sandbox", "--disable-gpu"],
  });
  try {
    const args = ["dist/kitquill.mjs", "publish", "samples/plover/plover.md", "--only=guide"];
    const { status } = spawnSync(process.execPath, [...args, "--out", folder], { cwd: ROOT });
    expect(status).toBe(0);
    const page = await browser.newPage({ viewport: { width: 1000, height: 860 } });
    await page.goto(pathToFileURL(join(folder, "guide.html")).href);
    await page.getByRole("link", { name: "The flat parts" }).first().click();
    await page.mouse.move(0, 0);
    await page.waitForTimeout(SETTLE_MS);
    await picture(page, "page");
  } finally {
    await browser.close();
    rmSync(folder, { recursive: true });
  }
});
