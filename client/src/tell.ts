/** Messages that ask nothing. */
import * as vscode from "vscode";

export function tell(message: string): void {
  void vscode.window.showInformationMessage(message);
}

export function tellError(message: string): void {
  void vscode.window.showErrorMessage(message);
}

/** For `when` clauses of the manifest. */
export function setContext(key: string, value: boolean): void {
  void vscode.commands.executeCommand("setContext", `kitquill.${key}`, value);
}
