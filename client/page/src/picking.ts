/** From the preview to the text: by a click, or with the arrow keys and Enter. */
import { STOPS } from "./prepare.ts";
import type { BlockRow } from "./row.ts";

interface Picker {
  open(block: number, step: string | undefined): void;
  follow(block: number, href: string): void;
}

/** What a click on does something of its own. */
const OWN = "button, summary, [popover]";

export function followPicks(main: HTMLElement, row: BlockRow, picker: Picker): void {
  main.addEventListener("click", (event) => {
    const target = event.target as Element;
    const block = row.idOf(target);
    const link = target.closest("a");
    const href = link?.getAttribute("href");
    if (block === undefined || target.closest(OWN)) return;
    if (link) {
      // Places of the page and addresses on the web are for the editor's own handling.
      if (!href || /^(?:#|https?:|mailto:)/i.test(href)) return;
      event.preventDefault();
      picker.follow(block, href);
    } else if (getSelection()?.isCollapsed !== false) {
      picker.open(block, stepAt(target));
    }
  });
  main.addEventListener("keydown", (event) => {
    const stop = event.target as HTMLElement;
    if (!stop.matches(STOPS) || event.ctrlKey || event.altKey || event.metaKey) return;
    const block = row.idOf(stop);
    if (event.key === "Enter" && block !== undefined) picker.open(block, undefined);
    else if (event.key === "ArrowDown") moveFocus(main, stop, 1);
    else if (event.key === "ArrowUp") moveFocus(main, stop, -1);
    else return;
    event.preventDefault();
  });
  // Of all stops the Tab key comes to one: where the reader was.
  main.addEventListener("focusin", (event) => {
    const stop = (event.target as HTMLElement).closest<HTMLElement>(STOPS);
    if (stop) makeStop(main, stop);
  });
}

/** Makes the element the one that the Tab key comes to. */
export function makeStop(main: HTMLElement, stop: HTMLElement): void {
  for (const other of main.querySelectorAll<HTMLElement>('[tabindex="0"]')) {
    other.tabIndex = -1;
    other.removeAttribute("aria-describedby");
  }
  stop.tabIndex = 0;
  stop.setAttribute("aria-describedby", "hint");
}

function moveFocus(main: HTMLElement, from: HTMLElement, by: 1 | -1): void {
  const stops = [...main.querySelectorAll<HTMLElement>(STOPS)];
  stops[stops.indexOf(from) + by]?.focus();
}

/** The number of the step that the element is in, sub-steps and rows of tables too. */
function stepAt(target: Element): string | undefined {
  const holder = target.closest("li, tr, .step");
  const tick = holder?.querySelector(":scope > .tick, :scope > .stepcell > .tick");
  return tick?.querySelector(".number")?.textContent ?? undefined;
}
