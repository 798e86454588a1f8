/** Reads the values of front matter keys out of the YAML tree; what does not fit becomes a problem. */

import { nearestWord } from "../text/nearest.ts";
import type { Entry, FrontMatterProblem, Spanned } from "./frontMatter.ts";
import { readLength } from "./frontMatterLengths.ts";
import { joinDecimals } from "./yaml/commas.ts";
import { quoteYaml, type YamlEntry, type YamlNode, type YamlText } from "./yaml/tree.ts";

const SEVERITIES = ["off", "hint", "info", "warning", "error"];
const SWITCHED_OFF = new Set(["false", "no", "none", "never"]);
/** Well-formed tags of BCP 47 (RFC 5646), private and grandfathered ones left aside. */
const LANGUAGE = /^[A-Za-z]{2,3}(?:-[A-Za-z0-9]{2,8})*$/;

export class ValueReader {
  readonly #source: string;
  readonly #report: (problem: FrontMatterProblem) => void;

  constructor(source: string, report: (problem: FrontMatterProblem) => void) {
    this.#source = source;
    this.#report = report;
  }

  /** One text. */
  text(entry: YamlEntry): Spanned<string> | undefined {
    const text = this.#textOf(entry, "one text");
    return text && { value: text.text, span: text.span };
  }

  language(entry: YamlEntry): Spanned<string> | undefined {
    const text = this.text(entry);
    if (text && !LANGUAGE.test(text.value)) {
      const message = `\`${text.value}\` is no language tag. Write the short form, such as \`en\`, \`de\` or \`pt-BR\`.`;
      this.#report({ span: text.span, message });
      return undefined;
    }
    return text;
  }

  /** A list of texts; a lone text is a list of one. */
  texts(entry: YamlEntry): Spanned<string>[] {
    const { value } = entry;
    if (value.kind === "text") {
      if (value.plain && value.text.includes(",")) this.#missingBrackets(entry.name, value);
      return [{ value: value.text, span: value.span }];
    }
    if (value.kind !== "list") return this.#refuse(entry, "a list: `[one, two]`") ?? [];
    return this.#listed(entry, value.items);
  }

  /** As `texts`, for words that may hold a number with a decimal comma. */
  phrases(entry: YamlEntry): Spanned<string>[] {
    const { value } = entry;
    if (value.kind !== "list") return this.texts(entry);
    return this.#listed(entry, joinDecimals(value.items, this.#source, this.#report));
  }

  /** Paths, each with the board it is for: a text, a list of them, or a mapping of boards. */
  parts(entry: YamlEntry): { board?: string; path: Spanned<string> }[] {
    const { value } = entry;
    const paths = this.#paths(value);
    if (paths.length === 0 && !(value.kind === "nothing" && value.reported)) {
      const message = `\`${entry.name}\` names no file. Write the path of the parts list: \`parts: list.csv\`.`;
      this.#report({ span: entry.nameSpan, message });
    }
    return paths;
  }

  #paths(node: YamlNode, board?: string): { board?: string; path: Spanned<string> }[] {
    switch (node.kind) {
      case "text":
        if (node.text === "") return [];
        return [
          { ...(board !== undefined && { board }), path: { value: node.text, span: node.span } },
        ];
      case "list":
        return node.items.flatMap((item) => this.#paths(item, board));
      case "map":
        if (board === undefined) {
          return node.entries.flatMap((entry) => this.#paths(entry.value, entry.name));
        }
        this.#report({ span: node.span, message: "Here the path of a parts list is needed." });
        return [];
      default:
        return [];
    }
  }

  /** A mapping of names to texts. */
  entries(entry: YamlEntry): Entry<string>[] {
    return this.#mapped(entry, (inner) => this.#textOf(inner, "a text")?.text);
  }

  /** A mapping of names to lengths in mm. */
  lengths(entry: YamlEntry): Entry<number>[] {
    return this.#mapped(entry, (inner) => this.#length(inner));
  }

  /** Lengths by board, or one length for every board (its name is empty). */
  clearance(entry: YamlEntry): Entry<number>[] {
    if (entry.value.kind !== "text") return this.lengths(entry);
    const mm = this.#length(entry);
    if (mm === undefined) return [];
    return [{ name: "", nameSpan: entry.nameSpan, value: mm, span: entry.value.span }];
  }

  /** A mapping of names to whole numbers. */
  counts(entry: YamlEntry): Entry<number>[] {
    return this.#mapped(entry, (inner) => {
      const text = this.#textOf(inner, "a number of pieces");
      if (!text) return undefined;
      if (/^\d{1,9}$/.test(text.text)) return Number(text.text);
      const message = `\`${text.text}\` is no number of pieces. Write a whole number, such as \`2\`.`;
      this.#report({ span: text.span, message });
      return undefined;
    });
  }

  /** A mapping of check codes to severities, in lower case; numbers in it are limits. */
  severities(entry: YamlEntry): Entry<string>[] {
    return this.#mapped(entry, (inner) => {
      if (limitIn(inner) !== undefined) return undefined;
      const text = this.#textOf(inner, "a severity");
      return text && this.#severity(text);
    });
  }

  /** The numbers in a mapping of check codes, whose other values `severities` reads. */
  limits(entry: YamlEntry): Entry<number>[] {
    return entry.value.kind === "map" ? this.#mapped(entry, limitIn) : [];
  }

  /** A mapping of those names to shares in per cent, above 0 and up to 100. */
  shares(entry: YamlEntry, names: readonly string[]): Entry<number>[] {
    return this.#mapped(entry, (inner) => {
      if (!names.includes(inner.name)) return this.#unknownName(entry.name, inner, names);
      const text = this.#textOf(inner, "a share of the rating");
      if (!text) return undefined;
      const percent = /^(\d{1,3}(?:[.,]\d{1,3})?)\s*%?$/.exec(text.text)?.[1]?.replace(",", ".");
      const share = Number(percent);
      if (share > 0 && share <= 100) return share;
      const message = `\`${text.text}\` is no share of a rating. Write one above zero and up to 100 %: \`60 %\`.`;
      this.#report({ span: text.span, message });
      return undefined;
    });
  }

  #unknownName(key: string, { name, nameSpan }: YamlEntry, names: readonly string[]): undefined {
    const meant = nearestWord(name, names);
    this.#report({
      span: nameSpan,
      message: `\`${key}\` knows no \`${name}\`, so this has no effect. Write ${names.map((one) => `\`${one}\``).join(" or ")}.`,
      ...(meant && { suggestion: { title: `Write ${meant}`, span: nameSpan, text: meant } }),
    });
  }

  #severity(text: YamlText): string | undefined {
    const word = text.text.toLowerCase();
    if (word === "information") return "info";
    if (SEVERITIES.includes(word)) return word;
    const meant = SWITCHED_OFF.has(word) ? "off" : nearestWord(word, SEVERITIES);
    this.#report({
      span: text.span,
      message: `\`${text.text}\` is no severity. Write off, hint, info, warning or error.`,
      ...(meant && { suggestion: { title: `Write ${meant}`, span: text.span, text: meant } }),
    });
    return undefined;
  }

  #length(entry: YamlEntry): number | undefined {
    const text = this.#textOf(entry, "a length");
    if (!text) return undefined;
    const length = readLength(text.text);
    if (!length) {
      const message = `\`${text.text}\` is no length. Write a number above zero and its unit: \`11 mm\` or \`0.43 in\`.`;
      this.#report({ span: text.span, message });
    } else if (length.unit === "") {
      this.#report({
        span: text.span,
        message: `\`${text.text}\` has no unit and is taken as millimetres. Write \`${text.text} mm\`.`,
        suggestion: {
          title: `Write ${text.text} mm`,
          span: text.span,
          text: `${text.text} mm`,
          safe: true,
        },
      });
    }
    return length?.mm;
  }

  #mapped<T>(entry: YamlEntry, read: (inner: YamlEntry) => T | undefined): Entry<T>[] {
    const { value } = entry;
    if (value.kind !== "map") {
      return this.#refuse(entry, "names with values: `{ name: value }`") ?? [];
    }
    return value.entries.flatMap((inner) => {
      const result = read(inner);
      if (result === undefined) return [];
      const { name, nameSpan } = inner;
      return [{ name, nameSpan, value: result, span: inner.value.span }];
    });
  }

  #listed(entry: YamlEntry, items: readonly YamlNode[]): Spanned<string>[] {
    return items.flatMap((item) => {
      if (item.kind === "text") return [{ value: item.text, span: item.span }];
      if (item.kind === "nothing") return [];
      const message = `Each entry of \`${entry.name}\` is one text. Put it in quotes if it holds a colon, a brace or a bracket.`;
      this.#report({ span: item.span, message });
      return [];
    });
  }

  #textOf(entry: YamlEntry, wanted: string): YamlText | undefined {
    if (entry.value.kind === "text") return entry.value;
    return this.#refuse(entry, wanted);
  }

  #refuse(entry: YamlEntry, wanted: string): undefined {
    const { name, value } = entry;
    if (value.kind === "nothing") {
      if (value.reported) return undefined;
      const message = `\`${name}\` has no value. Write ${wanted}, or remove it.`;
      this.#report({ span: entry.nameSpan, message });
    } else {
      this.#report({ span: value.span, message: `\`${name}\` needs ${wanted} here.` });
    }
    return undefined;
  }

  #missingBrackets(name: string, value: YamlText): void {
    const text = `[${value.text}]`;
    this.#report({
      span: value.span,
      message: `\`${name}\` needs a list in brackets. As it stands this is one entry: ${quoteYaml(value.text)}.`,
      suggestion: { title: `Write ${text}`, span: value.span, text },
    });
  }
}

/** A plain number above zero. */
function limitIn({ value }: YamlEntry): number | undefined {
  if (value.kind !== "text" || !/^\d{1,6}(?:\.\d{1,6})?$/.test(value.text)) return undefined;
  return Number(value.text) > 0 ? Number(value.text) : undefined;
}
