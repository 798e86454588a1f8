/** Texts of the author's in Markdown of ours. */

/** The text as it is, wherever Markdown is shown. */
export function escapeMarkdown(text: string): string {
  return text.replace(/[\\`*_{}[\]<>()#+!|~-]/g, "\\$&");
}
