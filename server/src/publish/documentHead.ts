/** How each HTML file that we write begins. */
import { escapeHtml } from "./html.ts";
import { HTML_MARK } from "./mark.ts";

export interface DocumentHead {
  /** Language tag of the text. */
  readonly language: string;
  readonly title: string;
  /** What the file may load and run, as a Content-Security-Policy. */
  readonly policy: string;
  /** CSS, with its last line end. */
  readonly style: string;
}

export function titleElement(title: string): string {
  return `<title>${escapeHtml(title)}</title>`;
}

/** From the document type to the end of the head, our mark in it. */
export function documentHead({ language, title, policy, style }: DocumentHead): string {
  return `<!DOCTYPE html>
<html lang="${escapeHtml(language)}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
${HTML_MARK}
<meta http-equiv="Content-Security-Policy" content="${policy}">
${titleElement(title)}
<style>
${style}</style>
</head>`;
}
