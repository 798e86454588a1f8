/**
 * YAML to a plain tree of texts, lists and mappings. Every scalar is read as the text it is written
 * as. Aliases are not followed, so a text that multiplies itself costs nothing.
 */
import {
  isAlias,
  isScalar,
  isSeq,
  type ParsedNode,
  parseDocument,
  type YAMLMap,
  type YAMLParseError,
} from "yaml";
import type { Span } from "../../text/span.ts";
import type { FrontMatterProblem } from "../frontMatter.ts";
import { joinEntries } from "./commas.ts";
import { explainYamlError, KEY_MISSING, TOO_DEEP, textWithColons } from "./errors.ts";
import type { YamlEntry, YamlNode, YamlText } from "./tree.ts";

/** Deeper than any front matter means to be. */
const MAX_DEPTH = 8;
/** How many lines with a second colon are put right before the rest is left to the parser. */
const MAX_REPAIRS = 50;
/** How often the text is parsed again after that: a repair may show the next line in need of one. */
const MAX_ROUNDS = 4;
/** Stands for a colon that is no separator while YAML is parsed; a private-use character. */
const PLAIN_COLON = "\uE03A";

/** The tree of the YAML at `body`; what is wrong with it goes to `report`. Never throws. */
export function readYaml(
  source: string,
  body: Span,
  report: (problem: FrontMatterProblem) => void,
): YamlNode {
  const document = parseRepaired(source, body, report);
  const converter = new Converter(source, body, report);
  return converter.node(document.contents, body, 0);
}

/**
 * Parses, and parses again with the second colon of `title: Heron: a kit` out of the way: otherwise
 * all lines below would be lost, and with them the parts list. The text keeps its length.
 */
function parseRepaired(source: string, body: Span, report: (problem: FrontMatterProblem) => void) {
  // The parser does not take a lone carriage return for a line end, as YAML 1.2 does.
  let yaml = source.slice(body.start, body.end).replace(/\r(?!\n)/g, "\n");
  for (let round = 0; ; round++) {
    const document = parse(yaml);
    const surplus = round < MAX_ROUNDS ? colonTexts(document.errors, source, body) : [];
    if (surplus.length === 0) {
      for (const error of [...withoutEcho(document.errors), ...document.warnings]) {
        report(explainYamlError(error, source, body));
      }
      return document;
    }
    for (const { error, span } of surplus) {
      report(explainYamlError(error, source, body));
      yaml = withoutColons(yaml, span.start - body.start, span.end - body.start);
    }
  }
}

/** The errors that a colon too many makes, with the texts that hold it; no two of them overlap. */
function colonTexts(errors: readonly YAMLParseError[], source: string, body: Span) {
  const found: { error: YAMLParseError; span: Span }[] = [];
  for (const error of errors) {
    const span = textWithColons(error, source, body);
    if (!span || !source.slice(span.start, span.end).includes(":")) continue;
    if (found.every((one) => span.start >= one.span.end)) found.push({ error, span });
    if (found.length === MAX_REPAIRS) break;
  }
  return found;
}

/** After one token that fits nowhere every further one is refused too: the first says it all. */
function withoutEcho(errors: readonly YAMLParseError[]): readonly YAMLParseError[] {
  const first = errors.find(({ code }) => code === "UNEXPECTED_TOKEN");
  return errors.filter((error) => error.code !== "UNEXPECTED_TOKEN" || error === first);
}

function parse(yaml: string) {
  return parseDocument(yaml, {
    // Every scalar a text: `off`, `1.0` and `2024` stay what the author wrote.
    schema: "failsafe",
    prettyErrors: false,
    uniqueKeys: false,
    logLevel: "error",
  });
}

function withoutColons(yaml: string, start: number, end: number): string {
  return (
    yaml.slice(0, start) + yaml.slice(start, end).replaceAll(":", PLAIN_COLON) + yaml.slice(end)
  );
}

class Converter {
  readonly #source: string;
  readonly #body: Span;
  readonly #report: (problem: FrontMatterProblem) => void;
  #aliasReported = false;

  constructor(source: string, body: Span, report: (problem: FrontMatterProblem) => void) {
    this.#source = source;
    this.#body = body;
    this.#report = report;
  }

  /** `place` is where an empty value would stand. */
  node(node: ParsedNode | null, place: Span, depth: number): YamlNode {
    if (!node) return { kind: "nothing", span: place, reported: false };
    const span = this.#span(node.range[0], node.range[1]);
    if (isScalar(node)) return this.#text(node.type ?? "", String(node.value ?? ""), span, place);
    if (isAlias(node)) return this.#alias(span);
    if (depth === MAX_DEPTH) {
      this.#report({ span, message: TOO_DEEP });
      return { kind: "nothing", span, reported: true };
    }
    if (isSeq(node)) {
      const items = node.items.map((item) => this.node(item, span, depth + 1));
      return { kind: "list", items, span };
    }
    return { kind: "map", entries: this.#entries(node as YAMLMap.Parsed, depth), span };
  }

  #entries(map: YAMLMap.Parsed, depth: number): YamlEntry[] {
    const read: YamlEntry[] = [];
    for (const { key, value } of map.items) {
      const name = this.#name(key, map);
      if (!name) continue;
      const place = { start: name.span.end, end: name.span.end };
      read.push({
        name: name.text,
        nameSpan: name.span,
        value: this.node(value, place, depth + 1),
        plain: name.plain,
      });
    }
    const entries = map.flow ? joinEntries(read, this.#source, this.#report) : read;
    return this.#once(entries);
  }

  #name(key: ParsedNode | null, map: YAMLMap.Parsed): YamlText | undefined {
    if (isScalar(key)) {
      const name = this.node(key, this.#body, 0);
      if (name.kind === "text") return name;
    }
    const span = this.#span(key?.range[0] ?? map.range[0], key?.range[1] ?? map.range[1]);
    this.#report({ span, message: KEY_MISSING });
    return undefined;
  }

  #once(entries: readonly YamlEntry[]): YamlEntry[] {
    const seen = new Set<string>();
    return entries.filter(({ name, nameSpan }) => {
      if (!seen.has(name)) return seen.add(name);
      const message = `\`${name}\` is given twice. Only the first counts: remove one of them.`;
      this.#report({ span: nameSpan, message });
      return false;
    });
  }

  #text(type: string, value: string, span: Span, place: Span): YamlNode {
    if (type === "PLAIN" && value === "") return { kind: "nothing", span: place, reported: false };
    const text = value.replaceAll(PLAIN_COLON, ":").trim();
    const oneLine = !/[\r\n]/.test(this.#source.slice(span.start, span.end));
    const quoted = type === "QUOTE_SINGLE" || type === "QUOTE_DOUBLE";
    const closed = quoted && /^(["']).*\1$/.test(this.#source.slice(span.start, span.end));
    const inner = closed ? { start: span.start + 1, end: span.end - 1 } : span;
    return { kind: "text", text, span: inner, plain: type === "PLAIN" && oneLine };
  }

  #alias(span: Span): YamlNode {
    if (!this.#aliasReported) {
      this.#aliasReported = true;
      const message = `\`${this.#source.slice(span.start, span.end)}\` is a YAML alias. Aliases are not followed here: write the value out, or put it in quotes if it is meant as it stands.`;
      this.#report({ span, message });
    }
    return { kind: "nothing", span, reported: true };
  }

  #span(start: number, end: number): Span {
    const { start: offset, end: limit } = this.#body;
    return { start: Math.min(offset + start, limit), end: Math.min(offset + end, limit) };
  }
}
