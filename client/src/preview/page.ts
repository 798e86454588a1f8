/** The page inside the panel: what it may load, and the script and style that it loads. */

import * as vscode from "vscode";

/** Files of the page, built from client/page/. */
export function pageFolder(extension: vscode.Uri): vscode.Uri {
  return vscode.Uri.joinPath(extension, "dist");
}

export function pageHtml(webview: vscode.Webview, extension: vscode.Uri): string {
  const file = (name: string) =>
    webview.asWebviewUri(vscode.Uri.joinPath(pageFolder(extension), name)).toString();
  const nonce = freshNonce();
  // Only our script runs, and pictures come from the folders that the panel may read.
  const policy = `default-src 'none'; img-src ${webview.cspSource} data:; style-src ${webview.cspSource}; script-src 'nonce-${nonce}'`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Preview</title>
<link rel="stylesheet" href="${file("preview-page.css")}">
</head>
<body>
<p id="hint" hidden>Enter goes to this place in the text. The arrow keys go to the step before and after.</p>
<p role="status" class="unseen"></p>
<main></main>
<script nonce="${nonce}" src="${file("preview-page.js")}"></script>
</body>
</html>`;
}

function freshNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
