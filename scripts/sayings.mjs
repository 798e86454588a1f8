// Finds what a source says in words: its texts of two words or more. Those that hang together are
// told as one; what is put in as it runs is shown as `…`, and a choice as `(one | other)`.
import { transform } from "esbuild";
import { parseAst } from "vite";

/** A word beside another, or beside what is put in. */
const WORDS = /[\p{L}…)\]`"”.,:;] +[\p{L}…([`"“]/u;
const WORD = /\p{L}{2}/u;
/** Regular expressions and HTML, which no user reads. */
const CODE = /\(\?[:!<=]|^\s*<[a-z]+[ >]|<\/[a-z]+>|-src '/;
/** Lists of words and of symbols: long, and neither a sentence nor a title. */
const LIST = /^(?!\p{Lu}\p{Ll})[^.,:;?()…]+$|\w \| \w+ \| /u;
const LONGEST_PHRASE = 13;

/**
 * @param {string} source of a TypeScript module
 * @returns {Promise<string[]>} in the order of the source, each once
 */
export async function sayingsIn(source) {
  const { code } = await transform(source, { loader: "ts", target: "esnext" });
  const found = new Set();
  collect(parseAst(code), found);
  return [...found];
}

function collect(node, found) {
  if (node.type === "ImportDeclaration" || node.type === "ExportAllDeclaration") return;
  if (isWordList(node)) return;
  const text = textOf(node);
  if (text !== undefined && isSaid(text)) found.add(text);
  else if (text !== undefined) for (const inner of putIn(node)) collect(inner, found);
  else for (const child of childrenOf(node)) collect(child, found);
}

/** `"one two three".split(" ")` */
function isWordList({ type, callee }) {
  return type === "CallExpression" && callee.property?.name === "split";
}

function isSaid(text) {
  if (!WORDS.test(text) || !WORD.test(text) || CODE.test(text)) return false;
  return text.split(" ").length < LONGEST_PHRASE || !LIST.test(text);
}

/** The text of a literal, a template, a sum of texts or a choice between them; else undefined. */
function textOf(node) {
  switch (node.type) {
    case "Literal":
      return typeof node.value === "string" ? node.value : undefined;
    case "TemplateLiteral":
      return node.quasis
        .map(({ value }, index) => value.cooked + hole(node.expressions[index]))
        .join("");
    case "BinaryExpression":
      return node.operator === "+" ? sum(node) : undefined;
    case "ConditionalExpression":
      return choice(node);
    default:
      return undefined;
  }
}

function hole(expression) {
  return expression === undefined ? "" : (textOf(expression) ?? "…");
}

function sum({ left, right }) {
  const texts = [textOf(left), textOf(right)];
  return texts.every((text) => text === undefined)
    ? undefined
    : texts.map((text) => text ?? "…").join("");
}

function choice({ consequent, alternate }) {
  const texts = [textOf(consequent), textOf(alternate)];
  return texts.some((text) => text === undefined) ? undefined : `(${texts.join(" | ")})`;
}

/** The expressions within a text that says nothing itself. */
function putIn(node) {
  return childrenOf(node).filter(({ type }) => type !== "TemplateElement");
}

function childrenOf(node) {
  return Object.values(node)
    .flat()
    .filter((child) => typeof child?.type === "string");
}
