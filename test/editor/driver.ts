/**
 * Drives a real editor in a headless browser with the verbs of somebody who writes a guide.
 * Everything is read from what the editor shows. A verb that does not get what it waits for
 * throws and says what was last seen.
 */
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { type Browser, chromium, errors, type Locator, type Page } from "playwright-core";
import { findBrowser } from "../../scripts/browser.mjs";
import { serveEditor } from "./host.ts";
import type { Host } from "./hostProcess.ts";

const SCREENSHOTS = join(import.meta.dirname, "../screenshots");
/** The command of the editor that loads its window anew. */
const RELOAD = "Developer: Reload Window";
const PATIENCE_MS = 20_000;
/** The editor fades and debounces; waits of this length settle what has no sign to wait for. */
const SETTLE_MS = 400;
/** A box of the editor opens within this time, or does not. */
const BOX_MS = 3_000;

/** Settings that leave nothing on the screen but what a test is about. */
export const QUIET = {
  "telemetry.telemetryLevel": "off",
  "workbench.startupEditor": "none",
  "workbench.tips.enabled": false,
  "workbench.editor.enablePreview": false,
  "workbench.enableExperiments": false,
  "extensions.ignoreRecommendations": true,
  "files.autoSave": "off",
  "editor.minimap.enabled": false,
  "editor.wordBasedSuggestions": "off",
  "editor.autoClosingBrackets": "never",
  "editor.quickSuggestions": false,
  "markdown.validate.enabled": false,
  "chat.disableAIFeatures": true,
};

const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

export interface StartOptions {
  /** Copied, so edits never reach it. */
  readonly folder: string;
  readonly settings?: Readonly<Record<string, unknown>>;
  /** A script to run in place of the extension's own server. */
  readonly server?: string;
}

/** An entry of the Problems view. */
export interface Problem {
  readonly file: string;
  readonly severity: "Error" | "Warning" | "Info";
  readonly message: string;
  readonly source: string;
  readonly code: string;
  readonly line: number;
  readonly column: number;
}

export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

/** Starts an editor; the caller must close it. */
export async function start(options: StartOptions): Promise<Editor> {
  const host = await serveEditor(options.folder, options.server);
  return open(host, (page) => configure(page, host.port, options));
}

/** Opens the editor that a host serves; closing it stops the host. */
export async function open(
  host: Host,
  prepare: (page: Page) => Promise<void> = async () => {},
): Promise<Editor> {
  let browser: Browser | undefined;
  try {
    const executablePath = findBrowser();
    if (!executablePath) throw new Error("No Chromium or Chrome was found on this machine.");
    browser = await chromium.launch({ executablePath, args: FLAGS });
    const context = await browser.newContext({ viewport: { width: 1400, height: 1000 } });
    // The page that carries the settings counts as one from elsewhere, which panels are not served to.
    const allowed = ["clipboard-read", "clipboard-write", "local-network-access"];
    await context.grantPermissions(allowed);
    const page = await context.newPage();
    await prepare(page);
    const editor = new Editor(page, browser, host);
    await editor.load();
    return editor;
  } catch (error) {
    await browser?.close();
    await host.stop();
    throw error;
  }
}

/** Gives the workbench its settings before it starts; the page carries them in a meta tag. */
async function configure(page: Page, port: number, options: StartOptions): Promise<void> {
  const plain = `localhost:${port}`;
  await page.route(`http://code.${plain}/`, async (route) => {
    const response = await route.fetch({ url: `http://${plain}/` });
    const html = (await response.text()).replaceAll(plain, `code.${plain}`);
    const settings = { ...QUIET, ...options.settings };
    const extra = { configurationDefaults: settings };
    const tag = /(id="vscode-workbench-web-configuration" data-settings=")\{/;
    if (!tag.test(html)) throw new Error("The workbench's page has no configuration to add to.");
    const json = JSON.stringify(extra).slice(0, -1).replaceAll('"', "&quot;");
    await route.fulfill({ response, body: html.replace(tag, (_, start) => `${start}${json},`) });
  });
}

export class Editor {
  private patience = PATIENCE_MS;

  constructor(
    readonly page: Page,
    private readonly browser: Browser,
    private readonly host: Host,
  ) {}

  /** How long verbs wait for what they are after, from now on. */
  waitAtMost(milliseconds: number): void {
    this.patience = milliseconds;
    this.page.setDefaultTimeout(milliseconds);
  }

  /** Asks until the answer is right, and gives it; throws with the last answer otherwise. */
  async eventually<T>(ask: () => Promise<T>, right: (answer: T) => boolean): Promise<T> {
    const until = Date.now() + this.patience;
    for (;;) {
      const answer = await ask();
      if (right(answer)) return answer;
      if (Date.now() > until) {
        const seconds = this.patience / 1000;
        throw new Error(`Not within ${seconds} s. Last seen: ${JSON.stringify(answer, null, 2)}`);
      }
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }

  /** Opens the workbench and waits until it can be used. */
  async load(): Promise<void> {
    await this.page.goto(this.host.address);
    await this.ready();
  }

  /** Loads the window anew with the editor's own command, which first writes down what is open. */
  async reload(): Promise<void> {
    const loaded = this.page.waitForEvent("domcontentloaded");
    await this.offer("F1", RELOAD, `>${RELOAD}`);
    await this.page.keyboard.press("Enter");
    await loaded;
    await this.ready();
  }

  async close(): Promise<void> {
    await this.browser.close();
    await this.host.stop();
  }

  /** Runs a command by its full title, `Kitquill: Show Log`. */
  async command(title: string): Promise<void> {
    await this.pick("F1", title, `>${title}`);
  }

  /** Opens a file by its path in the folder, from the explorer. */
  async openFile(path: string): Promise<void> {
    const names = path.split("/");
    for (const folder of names.slice(0, -1)) {
      const row = this.explorerRow(folder);
      if ((await row.getAttribute("aria-expanded")) !== "true") await row.click();
    }
    await this.explorerRow(names.at(-1)!).click();
    await this.eventually(
      () => this.activeFile(),
      (file) => file === names.at(-1),
    );
    await this.page.locator(".editor-instance .monaco-editor .view-lines").first().waitFor();
    await this.focusEditor();
  }

  /** Shows the explorer again after another side bar. */
  async showExplorer(): Promise<void> {
    await this.command("File: Focus on Files Explorer");
  }

  /** The name on the active tab. */
  async activeFile(): Promise<string> {
    const tab = this.page.locator(".editor-group-container.active .tab.active .label-name");
    return (await tab.count()) > 0 ? ((await tab.first().textContent()) ?? "") : "";
  }

  /** Puts the cursor at a place in the active file; counts from 1 as the editor does. */
  async goTo(line: number, column = 1): Promise<void> {
    await this.page.keyboard.press("Control+g");
    await this.quickInput().fill(`:${line}:${column}`);
    await this.page.keyboard.press("Enter");
    await this.eventually(
      () => this.cursor(),
      (at) => at.line === line && at.column === column,
    );
  }

  /** Where the cursor is, as the status bar tells. */
  async cursor(): Promise<Place> {
    const status = await textOf(this.page.locator('[id="status.editor.selection"]'));
    const at = /Ln (\d+), Col (\d+)/.exec(status);
    const file = await this.activeFile();
    return { file, line: Number(at?.[1] ?? 0), column: Number(at?.[2] ?? 0) };
  }

  /** Types at the cursor, key by key. */
  async typeText(text: string): Promise<void> {
    await this.page.keyboard.type(text);
  }

  async press(key: string): Promise<void> {
    await this.page.keyboard.press(key);
  }

  /** Deletes this many characters to the right of a place. */
  async deleteAt(line: number, column: number, count: number): Promise<void> {
    await this.goTo(line, column);
    for (let i = 0; i < count; i++) await this.page.keyboard.press("Delete");
  }

  /** The whole text of the active file, by way of the clipboard. */
  async text(): Promise<string> {
    await this.page.evaluate("navigator.clipboard.writeText('')");
    await this.focusEditor();
    await this.page.keyboard.press("Control+a");
    await this.page.keyboard.press("Control+c");
    return this.eventually(
      () => this.page.evaluate<string>("navigator.clipboard.readText()"),
      (text) => text !== "",
    );
  }

  async save(): Promise<void> {
    await this.page.keyboard.press("Control+s");
    await this.page.locator(".tab.active.dirty").waitFor({ state: "detached" });
  }

  /** Closes the active file, whose text must be saved or reverted. */
  async closeFile(): Promise<void> {
    const name = await this.activeFile();
    await this.page.locator(".editor-group-container.active .tab.active .codicon-close").click();
    await this.eventually(
      () => this.activeFile(),
      (file) => file !== name,
    );
  }

  /** Drops what is not saved, and closes all files. */
  async closeAll(): Promise<void> {
    while ((await this.activeFile()) !== "") {
      const isDirty = (await this.page.locator(".tab.active.dirty").count()) > 0;
      if (isDirty) await this.command("File: Revert File");
      await this.closeFile();
    }
  }

  /** The labels that the list of suggestions shows, once it shows any. */
  async suggestions(): Promise<string[]> {
    const labels = this.page.locator(".suggest-widget.visible .monaco-list-row .label-name");
    return this.eventually(
      () => labels.allInnerTexts(),
      (shown) => shown.length > 0,
    );
  }

  /** Takes a suggestion by its label. */
  async suggest(label: string): Promise<void> {
    const offered = await this.suggestions();
    if (!offered.includes(label)) throw new Error(`Only offered: ${offered.join(" | ")}`);
    const focused = this.page.locator(".suggest-widget.visible .monaco-list-row.focused");
    for (let i = 0; i <= offered.length; i++) {
      if ((await textOf(focused.locator(".label-name"))) === label) break;
      await this.press("ArrowDown");
    }
    await this.press("Enter");
  }

  /** Gives what stands at a place another name. */
  async rename(line: number, column: number, name: string): Promise<void> {
    await this.goTo(line, column);
    await this.press("F2");
    const box = this.page.locator(".rename-box input");
    await box.waitFor();
    await box.fill(name);
    await this.press("Enter");
    await box.waitFor({ state: "hidden" });
  }

  /** How many squiggles of each kind the visible part of the active file shows. */
  async squiggles(): Promise<{ errors: number; warnings: number; infos: number; hints: number }> {
    const count = (kind: string) =>
      this.page.locator(`.editor-group-container.active .cdr.squiggly-${kind}`).count();
    return {
      errors: await count("error"),
      warnings: await count("warning"),
      infos: await count("info"),
      hints: await count("hint"),
    };
  }

  /** The entries of the Problems view, of all files; the view is opened for it. */
  async problems(): Promise<Problem[]> {
    const panel = this.page.locator(".markers-panel");
    if (!(await panel.isVisible())) {
      await this.command("Problems: Focus on Problems View");
      await panel.waitFor();
      await this.focusEditor();
    }
    const rows = await panel.locator(".monaco-list-row").evaluateAll((elements) =>
      elements.map((row) => ({
        label: row.getAttribute("aria-label") ?? "",
        code: row.querySelector(".marker-code, .monaco-link")?.textContent ?? "",
      })),
    );
    return readProblems(rows);
  }

  /** The text of the hover at a place of the active file. */
  /** Follows the code of a finding in the Problems view. */
  async followCode(code: string): Promise<void> {
    await this.page.locator(".markers-panel a.monaco-link", { hasText: code }).first().click();
  }

  /** What the editor's own preview of Markdown shows. */
  async markdownPreview(): Promise<string> {
    const bodies = this.page.frames().map((frame) => frame.locator(".markdown-body"));
    // A frame may go while it is read.
    const texts = await Promise.all(bodies.map((body) => body.allInnerTexts().catch(() => [])));
    return texts.flat().join("\n");
  }

  async hover(line: number, column: number): Promise<string> {
    await this.goTo(line, column);
    await this.page.keyboard.press("Control+k");
    await this.page.keyboard.press("Control+i");
    const hover = this.page.locator(".monaco-hover:not(.hidden) .hover-contents");
    const text = await this.eventually(
      async () => (await hover.allInnerTexts()).join("\n").replaceAll("\u00a0", " "),
      (shown) => shown !== "" && !shown.includes("Loading"),
    );
    await this.page.waitForTimeout(SETTLE_MS);
    return text;
  }

  /** Applies the quick fix with this title at a place. Enter picks it: an overlay takes clicks. */
  async quickFix(line: number, column: number, title: string): Promise<void> {
    const offered = await this.eventually(
      async () => {
        const titles = await this.openQuickFixes(line, column);
        if (!titles.includes(title)) await this.press("Escape");
        return titles;
      },
      (titles) => titles.includes(title),
    );
    const focused = this.page.locator(".action-widget .monaco-list-row.action.focused");
    for (let i = 0; i <= offered.length; i++) {
      if ((await textOf(focused)) === title) break;
      await this.press("ArrowDown");
    }
    await this.press("Enter");
    await this.page.locator(".action-widget").waitFor({ state: "hidden" });
  }

  /** The titles of the quick fixes at a place; the list is closed again. */
  async quickFixes(line: number, column: number): Promise<string[]> {
    const offered = await this.openQuickFixes(line, column);
    await this.press("Escape");
    return offered;
  }

  /** Jumps to the definition of what stands at a place, and tells where that led. */
  async goToDefinition(line: number, column: number): Promise<Place> {
    await this.goTo(line, column);
    const before = await this.cursor();
    await this.press("F12");
    await this.eventually(
      () => this.cursor(),
      (at) => at.file !== before.file || at.line !== before.line,
    );
    // The name of the file changes before the place in it does.
    await this.page.waitForTimeout(SETTLE_MS);
    return this.cursor();
  }

  /** The texts of the messages that the editor shows in its corner. */
  async notifications(): Promise<string[]> {
    return this.page.locator(".notification-list-item-message").allInnerTexts();
  }

  /** Presses a button of a message in the corner. */
  async pressButton(label: string): Promise<void> {
    await this.page.locator(".notification-list-item-buttons-container").getByText(label).click();
  }

  /** What a dialog in the middle of the window asks; waits for it. */
  async dialog(): Promise<string> {
    const box = this.page.locator(".monaco-dialog-box .dialog-message-container");
    await box.waitFor();
    return textOf(box);
  }

  /** Presses a button of that dialog. */
  async answerDialog(label: string): Promise<void> {
    await this.page.locator(".monaco-dialog-box .monaco-button", { hasText: label }).click();
    await this.page.locator(".monaco-dialog-box").waitFor({ state: "detached" });
  }

  /** What the list at the top of the window offers; waits until it asks for `placeHolder`. */
  async offered(placeHolder: string): Promise<string[]> {
    await this.page.locator(`.quick-input-widget input[placeholder="${placeHolder}"]`).waitFor();
    const rows = this.page.locator(".quick-input-list .monaco-list-row");
    await rows.first().waitFor();
    return (await rows.allInnerTexts()).map((text) => text.replace(/\s+/g, " ").trim());
  }

  /** What the Output view shows. */
  async log(): Promise<string> {
    const lines = this.page.locator(".output-view .view-line");
    return this.eventually(
      () => textOf(lines),
      (text) => text !== "",
    );
  }

  /** The rows of one of Kitquill's views, as label and description; the view is opened for it. */
  async view(title: string): Promise<string[]> {
    await this.command(`Kitquill: Focus on ${title} View`);
    return this.viewRows(title).evaluateAll((elements) =>
      elements.map((row) =>
        [".label-name", ".label-description"]
          .map((part) => row.querySelector(part)?.textContent ?? "")
          .join(" ")
          .replace(/\s+/g, " ")
          .trim(),
      ),
    );
  }

  /** Waits until one of Kitquill's views is on the screen. */
  async viewShows(title: string): Promise<void> {
    await this.page.locator(`.pane-header[aria-label^="${title}"]`).waitFor();
    await this.page.waitForTimeout(SETTLE_MS);
  }

  /** Clicks a row of one of Kitquill's views, by the beginning of its label. */
  async clickInView(title: string, label: string): Promise<void> {
    await this.view(title);
    await this.viewRows(title).filter({ hasText: label }).first().click();
  }

  /** Presses a button of a row of one of Kitquill's views; buttons show when the mouse is on the row. */
  async actInView(title: string, label: string, action: string): Promise<void> {
    await this.view(title);
    const row = this.viewRows(title).filter({ hasText: label }).first();
    await row.hover();
    await row.locator(`.action-label[aria-label^="${action}"]`).click();
  }

  /**
   * Drags a row of one of Kitquill's views to a place in the text. With Shift held, as the editor asks
   * for whatever is dropped into a text.
   */
  async dragFromView(title: string, label: string, line: number, column: number): Promise<void> {
    await this.goTo(line, column);
    await this.view(title);
    const row = this.viewRows(title).filter({ hasText: label }).first();
    const cursor = this.page.locator(".editor-group-container.active .cursors-layer .cursor");
    const at = await cursor.first().boundingBox();
    if (!at) throw new Error(`Line ${line} is not in view.`);
    const [x, y] = [at.x + 1, at.y + at.height / 2];
    await row.hover();
    await this.page.mouse.down();
    await this.page.mouse.move(x + 40, y, { steps: 5 });
    await this.page.keyboard.down("Shift");
    await this.page.mouse.move(x, y, { steps: 5 });
    await this.page.mouse.up();
    await this.page.keyboard.up("Shift");
  }

  /** Presses a button in the title of one of Kitquill's views. */
  async actOnView(title: string, action: string): Promise<void> {
    const header = this.page.locator(`.pane-header[aria-label^="${title}"]`);
    await header.hover();
    await header.locator(`.action-label[aria-label^="${action}"]`).click();
  }

  /** Gives a file of the folder's top another name in the explorer. */
  async renameFile(name: string, to: string): Promise<void> {
    await this.showExplorer();
    await this.explorerRow(name).click();
    // A click opens the file and leaves the keys to it.
    await this.showExplorer();
    await this.press("F2");
    const box = this.page.locator(".explorer-folders-view input");
    await box.fill(to);
    await this.press("Enter");
    await box.waitFor({ state: "hidden" });
  }

  /** Chooses from the menu of a file in the explorer. */
  async chooseInMenu(file: string, entry: string): Promise<void> {
    await this.explorerRow(file).click({ button: "right" });
    await this.chooseInOpenMenu(entry);
  }

  private async chooseInOpenMenu(entry: string): Promise<void> {
    const items = this.page.locator(".monaco-menu .action-item");
    await items.filter({ hasText: entry }).first().hover();
    // A click may close a menu that has just opened without choosing anything; a key does not.
    await this.page.locator(".monaco-menu .action-item.focused", { hasText: entry }).waitFor();
    await this.page.keyboard.press("Enter");
  }

  /** Chooses from the menu behind the three dots over the active file. */
  async chooseInTitleMenu(entry: string): Promise<void> {
    const actions = this.page.locator(".editor-group-container.active .title .editor-actions");
    await actions.locator(".codicon-toolbar-more").click();
    await this.chooseInOpenMenu(entry);
  }

  /** Chooses from the menu at the cursor. */
  async chooseAtCursor(entry: string): Promise<void> {
    await this.press("Shift+F10");
    await this.chooseInOpenMenu(entry);
  }

  /** Confirms a list of ticked entries at the top of the window, once it shows this one. */
  async confirmPicks(entry: string): Promise<void> {
    await this.page.locator(".quick-input-list .monaco-list-row", { hasText: entry }).waitFor();
    await this.page.keyboard.press("Enter");
    await this.page.locator(".quick-input-widget").waitFor({ state: "hidden" });
  }

  /** Presses a button of the dialog in the middle of the window. */
  async pressInDialog(label: string): Promise<void> {
    const button = this.page.locator(".monaco-dialog-box .monaco-button", { hasText: label });
    await button.first().click();
    await this.page.locator(".monaco-dialog-box").waitFor({ state: "detached" });
  }

  /** What the status bar says of the guide; empty while it says nothing. */
  async progress(): Promise<string> {
    return textOf(this.page.locator('.statusbar-item[id*="kitquill.progress"]'));
  }

  /** Clicks what the status bar says of the guide. */
  async clickProgress(): Promise<void> {
    await this.page.locator('.statusbar-item[id*="kitquill.progress"] a').click();
  }

  /** Fills the box at the top of the window and confirms. */
  async answer(text: string): Promise<void> {
    await this.quickInput().waitFor();
    await this.quickInput().fill(text);
    await this.page.keyboard.press("Enter");
    await this.page.locator(".quick-input-widget").waitFor({ state: "hidden" });
  }

  /** Saves what the editor shows to test/screenshots/. */
  async screenshot(name: string): Promise<void> {
    mkdirSync(SCREENSHOTS, { recursive: true });
    await this.page.waitForTimeout(SETTLE_MS);
    await this.page.screenshot({ path: join(SCREENSHOTS, `${name}.png`) });
  }

  private async openQuickFixes(line: number, column: number): Promise<string[]> {
    await this.goTo(line, column);
    const rows = this.page.locator(".action-widget .monaco-list-row.action");
    // A server that has just started offers nothing yet, and the editor does not ask again.
    await this.eventually(
      async () => {
        await this.press("Control+.");
        await this.page.waitForTimeout(SETTLE_MS);
        return rows.count();
      },
      (count) => count > 0,
    );
    return (await rows.allInnerTexts()).map((text) => text.trim());
  }

  private async pick(key: string, label: string, query: string): Promise<void> {
    await this.offer(key, label, query);
    await this.page.keyboard.press("Enter");
    // The command may have a question of its own, in the same box.
    await this.eventually(
      async () =>
        (await this.quickInput().isVisible()) && (await this.quickInput().inputValue()) === query,
      (isOpen) => !isOpen,
    );
  }

  /** Asks in the editor's box until it offers what is looked for. */
  private async offer(key: string, label: string, query: string): Promise<void> {
    const row = this.page.locator(".quick-input-list .monaco-list-row.focused");
    await this.eventually(
      async () => {
        await this.page.keyboard.press(key);
        if (!(await this.fillBox(query))) return "";
        const text = await this.settled(() => textOf(row), label);
        // What comes to be possible while the box is open is not in it.
        if (!text.includes(label)) await this.page.keyboard.press("Escape");
        return text;
      },
      (text) => text.includes(label),
    );
  }

  /** False where no box opens: a key that comes while the focus moves is lost, or the box shuts again. */
  private async fillBox(query: string): Promise<boolean> {
    try {
      await this.quickInput().fill(query, { timeout: BOX_MS });
      return true;
    } catch (error) {
      if (error instanceof errors.TimeoutError) return false;
      throw error;
    }
  }

  /** What is there when the wanted text is in it, or after some time. */
  private async settled(ask: () => Promise<string>, wanted: string): Promise<string> {
    for (let i = 0; i < 20; i++) {
      const text = await ask();
      if (text.includes(wanted)) return text;
      await this.page.waitForTimeout(100);
    }
    return ask();
  }

  private viewRows(title: string): Locator {
    const header = this.page.locator(`.pane-header[aria-label^="${title}"]`);
    return this.page.locator(".pane", { has: header }).locator(".monaco-list-row");
  }

  private explorerRow(name: string): Locator {
    const label = this.page.locator(".label-name", { hasText: exactly(name) });
    return this.page.locator(".explorer-folders-view .monaco-list-row", { has: label });
  }

  private quickInput(): Locator {
    return this.page.locator(".quick-input-widget input.input");
  }

  private async focusEditor(): Promise<void> {
    await this.page.keyboard.press("Control+1");
  }

  private async ready(): Promise<void> {
    await this.page.locator(".monaco-workbench .part.sidebar .monaco-list-row").first().waitFor();
  }
}

function exactly(text: string): RegExp {
  return new RegExp(`^${text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}$`);
}

async function textOf(locator: Locator): Promise<string> {
  return (await locator.allInnerTexts()).join(" ").replaceAll("\u00a0", " ").trim();
}

/** Reads the rows of the Problems view: a row for each file, its entries below it. */
function readProblems(rows: readonly { label: string; code: string }[]): Problem[] {
  const problems: Problem[] = [];
  let file = "";
  for (const { label, code } of rows) {
    const head = /^\d+ problems? in file (.*?) of folder /.exec(label);
    if (head) file = head[1]!;
    const entry = PROBLEM.exec(label);
    if (!entry) continue;
    const [, severity, message, line, column, source] = entry as unknown as string[];
    problems.push({
      file,
      severity: severity as Problem["severity"],
      message: message!,
      line: Number(line),
      column: Number(column),
      source: source!,
      code: code.replace(/^\((.*)\)$/, "$1"),
    });
  }
  return problems;
}

const PROBLEM =
  /^(Error|Warning|Info): (.*) at line (\d+) and character (\d+)\.(?: This problem has references to \d+ locations\.)?(?: generated by (.*))?$/s;
