/** The command that publishes the guide in the editor into a folder of the workspace. */

import * as vscode from "vscode";
import {
  PUBLISH,
  PUBLISHABLE,
  type PublishableResult,
  type PublishParams,
  type PublishResult,
  type SentOutput,
} from "../../../server/src/lsp/protocol.ts";
import type { Ask } from "../start.ts";
import { tellError } from "../tell.ts";
import {
  chooseFolder,
  chooseOutputs,
  goOnWithErrors,
  goOnWithFaults,
  mayReplace,
} from "./choose.ts";
import { foreignFiles, writeFiles } from "./writeFiles.ts";

/**
 * `named` is the file that the author clicked; else the one in the editor, and where a panel has the
 * focus, the guide that is `followed`.
 */
export async function publishGuide(
  ask: Ask,
  named: vscode.Uri | undefined,
  followed: string | undefined,
): Promise<void> {
  const uri = (named ?? vscode.window.activeTextEditor?.document.uri)?.toString() ?? followed;
  const publishable =
    uri === undefined ? undefined : await ask<PublishableResult>(PUBLISHABLE, { uri });
  if (!publishable) {
    tellError(
      "There is no guide here to publish. Open a page of one: a Markdown file whose front matter names its parts list.",
    );
    return;
  }
  const guide = vscode.Uri.parse(publishable.guide, true);
  if (!vscode.workspace.getWorkspaceFolder(guide)) {
    tellError(
      "Files are written inside the workspace only. Open the folder of this guide to publish it.",
    );
    return;
  }
  if (!(await goOnWithErrors(publishable.errors))) return;
  const outputs = await chooseOutputs(publishable.outputs);
  const folder = outputs && (await chooseFolder(guide));
  if (!folder) return;
  try {
    await publishInto(ask, guide, outputs, folder);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    tellError(`The guide could not be published: ${why}`);
  }
}

async function publishInto(
  ask: Ask,
  guide: vscode.Uri,
  outputs: readonly string[],
  folder: vscode.Uri,
): Promise<void> {
  const publication = await withProgress(
    "Publishing: making the files",
    async (progress, token) => {
      const made = await ask<PublishResult>(PUBLISH, paramsFor(guide, outputs), {
        token,
        report: ({ message, percentage }) => progress(message, percentage),
      });
      if (!made && !token.isCancellationRequested)
        throw new Error("the server has no answer. Restart it with the command Restart Server.");
      return made;
    },
  );
  if (!publication) return;
  const { files, faults, warnings, sources } = publication;
  if (!(await goOnWithFaults(faults))) return;
  if (files.length === 0) {
    void vscode.window.showInformationMessage(
      "Nothing was published: the guide has nothing for what was chosen.",
    );
    return;
  }
  const source = files.find(({ name }) => sources.includes(placeOf(folder, name)));
  if (source) {
    throw new Error(
      `${source.name} is a source of the guide and would be replaced. Choose another folder.`,
    );
  }
  if (!(await mayReplace(await foreignFiles(folder, files)))) return;
  const isWritten = await withProgress("Publishing: writing", async (progress, token) =>
    writeFiles(folder, files, ({ name }, index) => {
      progress(name, (100 * index) / files.length);
      return !token.isCancellationRequested;
    }),
  );
  if (isWritten) await tellEnd(folder, files, warnings);
}

function placeOf(folder: vscode.Uri, name: string): string {
  return vscode.Uri.joinPath(folder, name).toString();
}

function paramsFor(guide: vscode.Uri, outputs: readonly string[]): PublishParams {
  const settings = vscode.workspace.getConfiguration("kitquill.publish", guide);
  const wordsPerMinute = settings.get<number | null>("wordsPerMinute") ?? undefined;
  return {
    guide: guide.toString(),
    outputs,
    picturesBeside: settings.get("pictures") === "beside",
    wordsPerMinute,
  };
}

type Progress = (message: string | undefined, percentage: number | undefined) => void;

/** Work that shows how far it is and can be cancelled. */
async function withProgress<Result>(
  title: string,
  work: (progress: Progress, token: vscode.CancellationToken) => Promise<Result>,
): Promise<Result> {
  const options = { location: vscode.ProgressLocation.Notification, title, cancellable: true };
  return vscode.window.withProgress(options, (progress, token) => {
    let before = 0;
    return work((message, percentage = before) => {
      progress.report({ ...(message && { message }), increment: percentage - before });
      before = percentage;
    }, token);
  });
}

const OPEN = "Open Page";
const SHOW = "Show in Explorer";

async function tellEnd(
  folder: vscode.Uri,
  files: readonly SentOutput[],
  warnings: readonly string[],
) {
  const where = vscode.workspace.asRelativePath(folder);
  const page = files.find(({ name }) => name === "guide.html");
  // Only what lies on a disk can be given to a browser.
  const canOpen = page !== undefined && folder.scheme === "file";
  const count = files.length === 1 ? "One file was" : `${files.length} files were`;
  if (warnings.length > 0) tellMissing(warnings);
  const chosen = await vscode.window.showInformationMessage(
    `${count} written to ${where}.`,
    ...(canOpen ? [OPEN, SHOW] : [SHOW]),
  );
  const first = vscode.Uri.joinPath(folder, (page ?? files[0]!).name);
  if (chosen === OPEN) await vscode.env.openExternal(first);
  if (chosen === SHOW) await vscode.commands.executeCommand("revealInExplorer", first);
}

const SHOWN_WARNINGS = 5;

/** What readers will miss. */
function tellMissing(warnings: readonly string[]): void {
  const more = warnings.length - SHOWN_WARNINGS;
  const rest = more > 0 ? [`And ${more} more like these.`] : [];
  void vscode.window.showWarningMessage([...warnings.slice(0, SHOWN_WARNINGS), ...rest].join(" "));
}
