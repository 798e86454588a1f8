// Draws media/icon.png (256 x 256) from media/icon.svg with the browser of the editor tests.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { findBrowser } from "./browser.mjs";
import { ROOT } from "./run.mjs";

const SIZE = 256;
const svg = readFileSync(join(ROOT, "media/icon.svg"), "utf8");
const browser = await chromium.launch({ executablePath: findBrowser(), args: ["--no-sandbox"] });
const page = await browser.newPage({ viewport: { width: SIZE, height: SIZE } });
await page.setContent(`<style>body { margin: 0 }</style>${svg}`);
const png = await page.screenshot({ omitBackground: true });
writeFileSync(join(ROOT, "media/icon.png"), png);
await browser.close();
