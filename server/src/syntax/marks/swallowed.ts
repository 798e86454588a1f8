/** Marks that CommonMark takes for something else: `[R1]: done` and `[R1](4k7)`. */
import type { Definition, Link } from "mdast";
import type { Span } from "../../text/span.ts";
import type { SyntaxProblem } from "../dialect.ts";
import { startOf } from "../nodes.ts";
import { MappedText } from "./mappedText.ts";
import { parseMark } from "./parseMark.ts";

/** A destination that can be nothing but a link: it has a path, a protocol, an anchor or a file type. */
const ADDRESS = /[/#?:@]|\.\p{L}{2,5}$/u;
const VALUE = /^\d[\p{L}\d.,%Ωµ°]*$/u;

/** The problem of a link definition whose label is a mark; `colon` is the offset behind the label. */
export function markAsDefinition(node: Definition, colon: number): SyntaxProblem | undefined {
  if (!isMark(node.label)) return undefined;
  const written = `[${node.label}]`;
  return {
    span: { start: startOf(node), end: colon + 1 },
    message:
      `In Markdown ${written}: followed by one word defines a link: it shows nothing and turns every ` +
      `${written} of the page into a link, so the parts are not counted. Leave the colon out.`,
    suggestion: { title: "Remove the colon", span: { start: colon, end: colon + 1 }, text: "" },
  };
}

/** The problem of a link whose text is a mark; `resource` is the offset of its round bracket. */
export function markAsLink(node: Link, resource: number, span: Span): SyntaxProblem | undefined {
  const text = node.children.every((child) => child.type === "text")
    ? node.children.map((child) => child.value).join("")
    : "";
  if (!isMark(text) || ADDRESS.test(node.url)) return undefined;
  const message =
    `In Markdown [${text}](${node.url}) is a link, so the parts are not counted. ` +
    "Put a space before the round bracket, or write a value after = inside the square one.";
  const suggestion =
    VALUE.test(node.url) && !text.includes("=")
      ? replace(`[${text} = ${node.url}]`, span)
      : replace(" (", { start: resource, end: resource + 1 }, "Put a space before (");
  return { span, message, suggestion };
}

function isMark(text: string | null | undefined): boolean {
  const result = parseMark(new MappedText(text ?? ""));
  return result !== undefined && "mark" in result && result.mark.certain;
}

function replace(text: string, span: Span, title = `Write ${text}`) {
  return { title, span, text };
}
