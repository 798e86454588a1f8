/** Earlier states of a file, from the editor's own git extension where there is one. */

import * as vscode from "vscode";

/** As much of the extension's interface as is used here. */
interface GitExtension {
  getAPI(version: 1): GitApi;
}
interface GitApi {
  getRepository(uri: vscode.Uri): Repository | null;
  toGitUri(uri: vscode.Uri, revision: string): vscode.Uri;
}
interface Repository {
  log(options: { path: string; maxEntries: number }): Promise<readonly Commit[]>;
}
interface Commit {
  readonly hash: string;
  readonly message: string;
  readonly authorDate?: Date;
}

/** A committed state of a file; the editor reads it like a file. */
export interface Committed {
  readonly uri: vscode.Uri;
  readonly label: string;
  readonly description: string;
}

const MOST = 30;

/** The last commits that changed the file, newest first; none without git. */
export async function committedStates(file: vscode.Uri): Promise<Committed[]> {
  const extension = vscode.extensions.getExtension<GitExtension>("vscode.git");
  if (!extension) return [];
  try {
    const api = (await extension.activate()).getAPI(1);
    const commits = await api.getRepository(file)?.log({ path: file.fsPath, maxEntries: MOST });
    return (commits ?? []).map(({ hash, message, authorDate }) => ({
      uri: api.toGitUri(file, hash),
      label: `$(git-commit) ${message.split("\n")[0]}`,
      description: [hash.slice(0, 8), authorDate?.toLocaleDateString()].filter(Boolean).join(", "),
    }));
  } catch {
    // Git may be switched off by a setting, or the file in no repository: there are other files then.
    return [];
  }
}
