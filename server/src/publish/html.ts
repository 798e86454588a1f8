/** Small tools for writing HTML. */

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** The text as content or as a quoted attribute. */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => ENTITIES[sign]!);
}

/** A step's number as the end of an id: `4.2` is `4-2`. */
export function numberId(number: string): string {
  return number.replaceAll(".", "-");
}

/** A heading's title as the end of an id, as hosting sites make it. */
export function titleId(title: string): string {
  return title
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s_-]/gu, "")
    .trim()
    .replace(/\s/g, "-");
}

/** Whether the address is the picture itself, which the author has written into the text. */
export function isWrittenOut(url: string): boolean {
  return /^data:image\/(?:png|jpeg|gif|webp|avif|svg\+xml)[;,]/i.test(url);
}
