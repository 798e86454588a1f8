/**
 * Runs our grammars over Markdown as the editor does: vscode-textmate and vscode-oniguruma are the
 * editor's own tokenizer, and tm-grammars carries the editor's own Markdown grammar.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import oniguruma from "vscode-oniguruma";
import textmate from "vscode-textmate";

const require = createRequire(import.meta.url);
const ours = JSON.parse(readFileSync("package.json", "utf8")).contributes.grammars as {
  scopeName: string;
  path: string;
}[];
/** Grammars that Markdown embeds and these tests use. */
const bundled: Readonly<Record<string, string>> = {
  "text.html.markdown": "markdown",
  "text.html.derivative": "html-derivative",
  "text.html.basic": "html",
  "source.yaml": "yaml",
};

function pathOf(scope: string): string | undefined {
  const own = ours.find((grammar) => grammar.scopeName === scope);
  if (own) return own.path;
  const name = bundled[scope];
  return name && require.resolve(`tm-grammars/grammars/${name}.json`);
}

async function makeGrammar(): Promise<textmate.IGrammar> {
  await oniguruma.loadWASM(readFileSync(require.resolve("vscode-oniguruma/release/onig.wasm")));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async (scope) => {
      const path = pathOf(scope);
      return path ? textmate.parseRawGrammar(readFileSync(path, "utf8"), "a.json") : null;
    },
    getInjections: (scope) =>
      scope === "text.html.markdown" ? ours.map((grammar) => grammar.scopeName) : undefined,
  });
  const grammar = await registry.loadGrammar("text.html.markdown");
  if (!grammar) throw new Error("the editor's Markdown grammar was not found");
  return grammar;
}

const grammar = await makeGrammar();

export interface Token {
  readonly text: string;
  readonly scopes: readonly string[];
}

/** All tokens of a Markdown text, line ends left out. */
function tokenize(markdown: string): Token[] {
  let state = textmate.INITIAL;
  return markdown.split("\n").flatMap((line) => {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
    state = ruleStack;
    return tokens.map(({ startIndex, endIndex, scopes }) => ({
      text: line.slice(startIndex, endIndex),
      scopes,
    }));
  });
}

/**
 * What our grammars colour in a Markdown text, as `text -> innermost scope` without punctuation.
 * Markup that is Markdown's own does not appear.
 */
export function coloured(markdown: string): string[] {
  return tokenize(markdown).flatMap(({ text, scopes }) => {
    const innermost = scopes.at(-1)!;
    const isOurs = scopes.some((scope) => scope.endsWith(".kitquill"));
    const name = scopes.findLast((scope) => scope.endsWith(".kitquill"));
    if (!isOurs || name === undefined || text.trim() === "") return [];
    if (name.startsWith("punctuation.") || innermost.startsWith("punctuation.")) return [];
    return [`${text.trim()} -> ${name.replace(/\.kitquill$/, "")}`];
  });
}

/** The scopes of the first token with exactly this text. */
export function scopesOf(markdown: string, text: string): readonly string[] {
  const token = tokenize(markdown).find((candidate) => candidate.text.trim() === text);
  if (!token) throw new Error(`no token ${JSON.stringify(text)} in ${JSON.stringify(markdown)}`);
  return token.scopes;
}
