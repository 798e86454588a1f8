/** Makes the nodes of a block fit for a preview: pictures by where the panel has them, fields idle. */
import type { PictureRoot } from "../../src/preview/messages.ts";

/** Fields and boxes are for the builder; in a preview they are to be seen. */
const IDLE = "input";
/** What the arrow keys go to. */
export const STOPS = ".step, .note, section > h2";

export function prepare(content: DocumentFragment, roots: readonly PictureRoot[]): void {
  for (const field of content.querySelectorAll<HTMLInputElement>(IDLE)) field.disabled = true;
  for (const picture of content.querySelectorAll("img")) place(picture, roots);
  for (const stop of content.querySelectorAll<HTMLElement>(STOPS)) stop.tabIndex = -1;
}

function place(picture: HTMLImageElement, roots: readonly PictureRoot[]): void {
  const source = picture.getAttribute("src") ?? "";
  if (source.startsWith("data:")) return;
  const root = roots.find(({ from }) => source.startsWith(from));
  if (root) picture.setAttribute("src", root.to + source.slice(root.from.length));
  else picture.removeAttribute("src");
}
