/** The page of the preview as its reader sees it: two frames down in the editor's window. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Frame } from "playwright-core";
import type { Editor } from "./driver.ts";

const AXE = readFileSync(
  join(import.meta.dirname, "../../node_modules/axe-core/axe.min.js"),
  "utf8",
);
/** Runs in the page: one line a violation. */
const AXE_RUN = `axe.run(document, { resultTypes: ["violations"] }).then(({ violations }) =>
  violations.map(({ id, help, nodes }) =>
    [id, help, ...nodes.slice(0, 3).map(({ html }) => html)].join(": ")))`;

export class PreviewPage {
  private constructor(
    private readonly editor: Editor,
    readonly frame: Frame,
  ) {}

  /** The page that is shown, once it shows blocks. */
  static async of(editor: Editor): Promise<PreviewPage> {
    let frames: Frame[] = [];
    await editor.eventually(
      async () => {
        frames = await framesWithBlocks(editor);
        return frames.length;
      },
      (count) => count > 0,
    );
    return new PreviewPage(editor, frames[0]!);
  }

  /** Waits until no page is shown, after its panel has been closed. */
  static async gone(editor: Editor): Promise<void> {
    await editor.eventually(
      async () => (await framesWithBlocks(editor)).length,
      (count) => count === 0,
    );
  }

  async text(selector: string): Promise<string> {
    return (await this.frame.locator(selector).first().allInnerTexts()).join("");
  }

  async shows(selector: string, wanted: string): Promise<void> {
    await this.editor.eventually(
      () => this.text(selector),
      (text) => text.includes(wanted),
    );
  }

  count(selector: string): Promise<number> {
    return this.frame.locator(selector).count();
  }

  evaluate<Answer>(expression: string): Promise<Answer> {
    return this.frame.evaluate<Answer>(expression);
  }

  /** Barriers that axe finds. Its script comes in by the driver's own door, past the page's policy. */
  async barriers(): Promise<string[]> {
    await this.frame.evaluate(AXE);
    return this.frame.evaluate<string[]>(AXE_RUN);
  }

  /** The step at the top of the panel, by its number. */
  topStep(): Promise<string> {
    return this.frame.evaluate<string>(`(() => {
      for (const step of document.querySelectorAll(".step")) {
        if (step.getBoundingClientRect().bottom > 10) return step.querySelector(".number").textContent;
      }
      return "";
    })()`);
  }
}

async function framesWithBlocks(editor: Editor): Promise<Frame[]> {
  const found: Frame[] = [];
  for (const frame of editor.page.frames()) {
    // A frame may go while it is asked.
    const blocks = frame.locator("main [data-block]").count();
    if ((await blocks.catch(() => 0)) > 0) found.push(frame);
  }
  return found;
}
