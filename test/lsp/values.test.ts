/** The protocol's numbers and words against its own package, which only the tests load. */
import { expect, test } from "vitest";
import * as protocol from "vscode-languageserver/node";
import * as values from "../../server/src/lsp/values.ts";

const library: Readonly<Record<string, unknown>> = { ...protocol };

test.each(
  Object.entries(values).filter(([name]) => !["ErrorCode", "CodeActionKind"].includes(name)),
)("%s has the protocol's values", (name, own) => {
  expect(library[name]).toMatchObject(own);
});

test("errors and kinds of actions have the protocol's values", () => {
  const { CodeActionKind, ErrorCodes, LSPErrorCodes } = protocol;
  expect(values.ErrorCode).toEqual({
    MethodNotFound: ErrorCodes.MethodNotFound,
    RequestCancelled: LSPErrorCodes.RequestCancelled,
    ContentModified: LSPErrorCodes.ContentModified,
    RequestFailed: LSPErrorCodes.RequestFailed,
  });
  expect(values.CodeActionKind).toEqual({
    QuickFix: CodeActionKind.QuickFix,
    Rewrite: CodeActionKind.RefactorRewrite,
    Move: CodeActionKind.RefactorMove,
    FixAll: `${CodeActionKind.SourceFixAll}.kitquill`,
  });
});
