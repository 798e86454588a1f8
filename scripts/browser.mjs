// Finds a Chromium-like browser on this machine for the tests in a real editor.
import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";

const NAMES = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "msedge"];
const PLACES = [
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
];

/** Path of the browser, or undefined when there is none. `KITQUILL_BROWSER` overrides the search. */
export function findBrowser() {
  const named = process.env.KITQUILL_BROWSER;
  if (named) return existsSync(named) ? named : undefined;
  const folders = (process.env.PATH ?? "").split(delimiter).filter(Boolean);
  const onPath = NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...onPath, ...PLACES].find((path) => existsSync(path));
}
