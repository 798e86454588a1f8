/** The page of the preview: shows what the panel sends, and tells where the reader is. */
import type { PreviewPlace, SentPatch } from "../../../server/src/lsp/protocol.ts";
import type { FromPage, PageState, PictureRoot, ToPage } from "../../src/preview/messages.ts";
import { followPicks, makeStop } from "./picking.ts";
import { prepare, STOPS } from "./prepare.ts";
import { BlockRow } from "./row.ts";
import { Scrolling } from "./scrolling.ts";

declare function acquireVsCodeApi(): {
  postMessage(message: FromPage): void;
  getState(): PageState | undefined;
  setState(state: PageState): void;
};

/** Where the reader was is kept once the scrolling has come to rest (ms). */
const REST_MS = 300;

const editor = acquireVsCodeApi();
const main = document.querySelector("main")!;
const status = document.querySelector<HTMLElement>("[role=status]")!;
let roots: readonly PictureRoot[] = [];
let marked: number | undefined;
let { uri, y: wantedY } = editor.getState() ?? {};

const row = new BlockRow(main, (content) => prepare(content, roots));
const scrolling = new Scrolling(row, (place) => {
  wantedY = undefined;
  editor.postMessage({ kind: "scrolled", place });
});
followPicks(main, row, {
  open: (block, step) => editor.postMessage({ kind: "open", block, step }),
  follow: (block, href) => editor.postMessage({ kind: "follow", block, href }),
});

addEventListener("message", ({ data }: MessageEvent<ToPage>) => {
  if (data.kind === "patch") {
    roots = data.roots;
    scrolling.quietly(() => patch(data.patch));
  } else if (data.kind === "reveal") reveal(data.place, data.withMarked);
  else mark(data.block, true);
});

let resting: ReturnType<typeof setTimeout> | undefined;
addEventListener("scroll", () => {
  clearTimeout(resting);
  resting = setTimeout(() => keepState(), REST_MS);
});
editor.postMessage({ kind: "ready", uri });

function patch({ uri: shown, title, language, isNew, splices }: SentPatch): void {
  if (isNew) {
    if (uri !== shown) wantedY = undefined;
    // The same guide begun anew goes on where the reader was.
    else if (row.length > 0) wantedY = scrollY;
    if (document.title !== title) status.textContent = `Preview of ${title}`;
    uri = shown;
    row.clear();
    keepState();
  }
  if (document.title !== title) document.title = title;
  // Setting it to what it is would have the browser style every element anew.
  if (main.lang !== language) main.lang = language;
  row.apply(splices);
  if (isNew) mark(marked, false);
  if (!main.querySelector('[tabindex="0"]')) {
    const first = main.querySelector<HTMLElement>(STOPS);
    if (first) makeStop(main, first);
  }
  if (wantedY !== undefined && document.documentElement.scrollHeight >= wantedY + innerHeight) {
    scrolling.to(wantedY);
    wantedY = undefined;
  }
}

/** Both in one go, or the page would be seen to jump. */
function reveal(place: PreviewPlace, withMarked: boolean): void {
  scrolling.reveal(place);
  const element = withMarked && marked !== undefined && row.element(marked);
  if (element) scrolling.show(element);
}

/** Marks the block in which the cursor is; `moved` says that it has come there now. */
function mark(block: number | undefined, moved: boolean): void {
  marked = block;
  const element = block === undefined ? undefined : row.element(block);
  for (const other of main.querySelectorAll(".current")) {
    if (other !== element) {
      other.classList.remove("current");
      other.removeAttribute("aria-current");
    }
  }
  if (!element) return;
  element.classList.add("current");
  element.setAttribute("aria-current", "location");
  if (moved) scrolling.show(element);
}

function keepState(): void {
  editor.setState({ ...(uri !== undefined && { uri }), y: wantedY ?? scrollY });
}
