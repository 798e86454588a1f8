/** What the YAML parser complains about, in words for an author who does not know YAML. */
import type { YAMLError } from "yaml";
import type { Span } from "../../text/span.ts";
import type { FrontMatterProblem } from "../frontMatter.ts";
import { quoteYaml } from "./tree.ts";

const WORDS: { readonly [code in YAMLError["code"]]?: string } = {
  TAB_AS_INDENT: "YAML does not allow a tab at a line's start. Indent with spaces.",
  BAD_INDENT:
    "This line is not indented as its neighbours are, so YAML cannot tell what it belongs to.",
  DUPLICATE_KEY: "This key stands twice.",
  MULTILINE_IMPLICIT_KEY:
    "YAML reads these lines as one key. Each line needs a key, a colon and a space: `title: Heron 40`.",
  MULTIPLE_DOCS:
    "A line that begins with `---` ends the front matter. Remove it, or put the text in quotes.",
  TAG_RESOLVE_FAILED: "YAML takes a word that begins with `!` for a tag. Put the value in quotes.",
  BAD_DQ_ESCAPE:
    "In double quotes a backslash begins an escape, and this one is unknown. Use single quotes, or double the backslash.",
  RESOURCE_EXHAUSTION: "This is nested too deeply to be read.",
  BLOCK_IN_FLOW:
    "Inside braces or brackets, entries are parted by commas, not by lines or hyphens.",
};

/** The problem that a parser error means, its place moved by `offset` into the page's text. */
export function explainYamlError(error: YAMLError, source: string, body: Span): FrontMatterProblem {
  const start = Math.min(error.pos[0] + body.start, body.end);
  const end = Math.max(start, Math.min(error.pos[1] + body.start, body.end));
  const span = { start, end };
  if (error.code === "BLOCK_AS_IMPLICIT_KEY") {
    const line = restOfLine(span.start, source, body.end);
    if (!source.slice(line.start, line.end).includes(":")) {
      return { span: line, message: WORDS.BAD_INDENT! };
    }
    const message =
      "YAML takes the second colon of this line for another key. Put the text in quotes.";
    return quoting(message, line, source);
  }
  if (error.code === "BAD_SCALAR_START") {
    return quoting(
      `YAML gives \`${source[start]}\` at the start of a value a meaning of its own. Put the value in quotes.`,
      restOfValue(span.start, source, body.end),
      source,
    );
  }
  if (error.code === "MISSING_CHAR") return { span, message: missing(error.message) };
  const words = WORDS[error.code];
  return { span, message: words ?? `This is not YAML: ${lowerFirst(error.message)}.` };
}

function missing(message: string): string {
  if (/map values/.test(message)) {
    return "This line has no key. Write a key, a colon and a space before the value: `title: Heron 40`.";
  }
  if (/quote/.test(message)) return "A quote is opened and never closed.";
  return `Something is missing here: ${lowerFirst(message)}.`;
}

function quoting(message: string, span: Span, source: string): FrontMatterProblem {
  const text = source.slice(span.start, span.end);
  return {
    span,
    message,
    suggestion: { title: `Put ${text} in quotes`, span, text: quoteYaml(text) },
  };
}

/** From an offset to the end of its line, without a comment and spaces at the end. */
export function restOfLine(start: number, source: string, limit: number): Span {
  return trimmedUpTo(/[\r\n]|[ \t]#/g, start, source, limit);
}

function restOfValue(start: number, source: string, limit: number): Span {
  return trimmedUpTo(/[\r\n,}\]]|[ \t]#/g, start, source, limit);
}

function trimmedUpTo(stop: RegExp, start: number, source: string, limit: number): Span {
  stop.lastIndex = start;
  const end = Math.min(stop.exec(source)?.index ?? limit, limit);
  return { start, end: start + source.slice(start, end).trimEnd().length };
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
