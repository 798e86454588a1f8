/** What a text is that holds no table: named in the finding that says so. */

/** The kind with its article, or undefined for plain text. */
export function markupKind(text: string): string | undefined {
  const head = text
    .slice(0, 2_000)
    .replace(/^\uFEFF/, "")
    .trimStart();
  if (/^(?:<!doctype html|<html)/i.test(head)) return "an HTML page";
  if (XML.test(head)) return "an XML file";
  if (head.startsWith("{\\rtf")) return "a rich text document";
  if (/^[[{]\s*["{[]/.test(head)) return "a JSON file";
  return undefined;
}

/** Whether the text begins as XML does. */
export function isXml(text: string): boolean {
  return markupKind(text) === "an XML file";
}

const XML = /^<(?:\?xml|!DOCTYPE|!--|[A-Za-z][\w:.-]*[\s>/])/;

/** Text in columns of blanks, or prose. */
export function plainKind(text: string): string {
  return isRuled(text)
    ? "a text with columns made of blanks (fixed width)"
    : "plain text without columns";
}

/** Whether a third of the lines or more have words parted by several blanks. */
export function isRuled(text: string): boolean {
  const lines = text
    .slice(0, 100_000)
    .split(/\r\n?|\n/)
    .filter((line) => line.trim() !== "");
  const ruled = lines.filter((line) => /\S(?: {2,}|\t+ *)\S/.test(line.trim()));
  return ruled.length >= lines.length / 3;
}
