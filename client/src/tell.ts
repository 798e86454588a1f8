/** Messages that wait for no answer. */
import * as vscode from "vscode";

export function tell(message: string): void {
  void vscode.window.showInformationMessage(message);
}

/** With a button, by which the editor also shows a long message whole. */
export async function tellAndOffer(
  message: string,
  button: string,
  command: string,
): Promise<void> {
  const chosen = await vscode.window.showInformationMessage(message, button);
  if (chosen === button) await vscode.commands.executeCommand(command);
}

export function tellError(message: string): void {
  void vscode.window.showErrorMessage(message);
}

/** For `when` clauses of the manifest. */
export function setContext(key: string, value: boolean): void {
  void vscode.commands.executeCommand("setContext", `kitquill.${key}`, value);
}
