/**
 * Numbers and words that the protocol gives a meaning, as in the Language Server Protocol 3.17: those
 * that are used here. The protocol's own package brings all of it along.
 */

export const TextDocumentSyncKind = { Incremental: 2 } as const;
export const MessageType = { Error: 1 } as const;
export const DiagnosticSeverity = { Error: 1, Warning: 2, Information: 3, Hint: 4 } as const;
export const MarkupKind = { Markdown: "markdown" } as const;
export const SymbolKind = { Module: 2, Method: 6, Constant: 14, Event: 24 } as const;
export const DocumentHighlightKind = { Read: 2, Write: 3 } as const;
export const InlayHintKind = { Type: 1 } as const;
export const InsertTextFormat = { Snippet: 2 } as const;
export const InsertTextMode = { asIs: 1 } as const;
export const CompletionItemKind = {
  Text: 1,
  Function: 3,
  Variable: 6,
  Property: 10,
  Unit: 11,
  Value: 12,
  Enum: 13,
  Keyword: 14,
  Snippet: 15,
  File: 17,
  Reference: 18,
  EnumMember: 20,
} as const;
export const CodeActionKind = {
  QuickFix: "quickfix",
  Rewrite: "refactor.rewrite",
  Move: "refactor.move",
  FixAll: "source.fixAll.kitquill",
} as const;
export const ErrorCode = {
  MethodNotFound: -32601,
  RequestCancelled: -32800,
  ContentModified: -32801,
  RequestFailed: -32803,
} as const;
