// What the extension's bundle leaves out of the protocol's client library, which brings all that any
// server may offer. It has no entry for a part of it: it registers every feature by itself.

/** Features of the library that our server does not offer, by file, with what a server says of each. */
export const NOT_OFFERED = {
  callHierarchy: "callHierarchyProvider",
  colorProvider: "colorProvider",
  declaration: "declarationProvider",
  // Findings are sent; this one is for servers that are asked for them.
  diagnostic: "diagnosticProvider",
  formatting: "documentFormattingProvider",
  implementation: "implementationProvider",
  inlineCompletion: "inlineCompletionProvider",
  inlineValue: "inlineValueProvider",
  linkedEditingRange: "linkedEditingRangeProvider",
  notebook: "notebookDocumentSync",
  textDocumentContent: "workspace.textDocumentContent",
  typeDefinition: "typeDefinitionProvider",
  typeHierarchy: "typeHierarchyProvider",
};

/** A feature that tells the server nothing and does nothing, as the library asks of one. */
const IDLE = `class Idle {
  fillClientCapabilities() {}
  initialize() {}
  getState() { return { kind: "static" }; }
  clear() {}
}`;

/** Puts idle features in the place of those that are not offered; it takes a quarter off. */
export const onlyWhatIsOffered = {
  name: "only what is offered",
  setup(builder) {
    const names = Object.keys(NOT_OFFERED).join("|");
    const filter = new RegExp(
      `[\\\\/]vscode-languageclient[\\\\/]lib[\\\\/]common[\\\\/](?:${names})\\.js$`,
    );
    builder.onLoad({ filter }, async ({ path }) => {
      const { readFile } = await import("node:fs/promises");
      const source = await readFile(path, "utf8");
      const features = [...source.matchAll(/^exports\.(\w+Feature) = \1;$/gm)].map(
        ([, one]) => one,
      );
      if (features.length === 0) throw new Error(`No feature was found in ${path}.`);
      const lines = features.map((one) => `exports.${one} = Idle;`);
      return { contents: `"use strict";\n${IDLE}\n${lines.join("\n")}\n`, loader: "js" };
    });
  },
};

/** The library asks for the editor's version, which `engines.vscode` has settled before. */
export const settledVersion = {
  name: "settled version",
  setup(builder) {
    const namespace = "settled-version";
    builder.onResolve({ filter: /^semver\/functions\// }, ({ path }) => ({ path, namespace }));
    builder.onLoad({ filter: /parse$/, namespace }, () => ({
      contents: "module.exports = (version) => ({ version, prerelease: [] });",
    }));
    builder.onLoad({ filter: /satisfies$/, namespace }, () => ({
      contents: "module.exports = () => true;",
    }));
  },
};
