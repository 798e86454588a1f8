/**
 * A comparison of two parts lists that the author works through. What it touches is asked for anew as
 * the texts change; each thing stays until its finding is gone, its step has been changed, or it is
 * dismissed. The comparison outlives the window.
 */

import * as vscode from "vscode";
import {
  RENUMBER,
  REVISE,
  type RenumberParams,
  type RenumberResult,
  type ReviseParams,
  type ReviseResult,
  type SentFile,
  type SentRenumbering,
  type SentTouched,
} from "../../../server/src/lsp/protocol.ts";
import { toBase64 } from "../base64.ts";
import { ENDINGS, filesOf } from "../partsLists.ts";
import type { Ask } from "../start.ts";
import { setContext } from "../tell.ts";

/** Typing and checking settle before it is asked again. */
const PAUSE_MS = 500;
const STORE = "kitquill.comparison";

/** What is kept of a comparison. */
interface Kept {
  /** URIs; the old list may be a committed state. */
  readonly list: string;
  readonly old: string;
  readonly label: string;
  readonly dismissed: readonly string[];
  /** The text of each touched step when it was first shown, in short. */
  readonly sources: Readonly<Record<string, number>>;
}

export interface TouchedItem {
  /** The same for one thing however the text around it changes. */
  readonly key: string;
  readonly touched: SentTouched;
}

export class Comparison implements vscode.Disposable {
  private readonly changed = new vscode.EventEmitter<void>();
  private readonly subscriptions: vscode.Disposable[];
  private timer: ReturnType<typeof setTimeout> | undefined;
  private asked = 0;
  private kept: Kept | undefined;
  items: readonly TouchedItem[] = [];
  renumbered: readonly SentRenumbering[] = [];
  readonly onChange = this.changed.event;

  constructor(
    private readonly ask: Ask,
    private readonly store: vscode.Memento,
  ) {
    this.kept = store.get<Kept>(STORE);
    const watcher = vscode.workspace.createFileSystemWatcher(filesOf(ENDINGS));
    this.subscriptions = [
      this.changed,
      vscode.workspace.onDidChangeTextDocument(() => this.soon()),
      vscode.languages.onDidChangeDiagnostics(() => this.soon()),
      watcher,
      watcher.onDidChange((uri) => this.soonAfter(uri)),
      // Programs that write a file anew delete the old one first.
      watcher.onDidCreate((uri) => this.soonAfter(uri)),
    ];
    this.tell();
    this.soon();
  }

  get label(): string {
    return this.kept?.label ?? "";
  }

  dispose(): void {
    clearTimeout(this.timer);
    for (const one of this.subscriptions) one.dispose();
  }

  /** Begins anew. Gives why there is nothing to compare. */
  async start(list: vscode.Uri, old: vscode.Uri, label: string): Promise<string | undefined> {
    this.keep({ list: list.toString(), old: old.toString(), label, dismissed: [], sources: {} });
    const problem = await this.refresh();
    if (problem !== undefined) this.end();
    return problem;
  }

  end(): void {
    this.keep(undefined);
    this.items = [];
    this.renumbered = [];
    this.tell();
  }

  dismiss(keys: readonly string[]): void {
    if (!this.kept) return;
    this.keep({ ...this.kept, dismissed: [...this.kept.dismissed, ...keys] });
    this.items = this.items.filter(({ key }) => !keys.includes(key));
    this.tell();
  }

  /** The edits that carry the pairs through the guide; undefined when nothing is compared. */
  async renumber(pairs: readonly SentRenumbering[]): Promise<RenumberResult | undefined> {
    const files = await this.files();
    if (!files || "problem" in files) return files;
    const params: RenumberParams = { ...files, pairs };
    return this.ask<RenumberResult>(RENUMBER, params);
  }

  /** Asks anew; gives why it has no answer. */
  async refresh(): Promise<string | undefined> {
    const order = ++this.asked;
    const files = await this.files();
    if (!files) return undefined;
    if ("problem" in files) return files.problem;
    const result = await this.ask<ReviseResult>(REVISE, files satisfies ReviseParams);
    if (order !== this.asked || !this.kept) return undefined;
    if (!result) return "The server has no answer. Restart it with the command Restart Server.";
    if ("problem" in result) return result.problem;
    this.renumbered = result.renumbered;
    this.show(keyed(result.touched), this.kept);
    return undefined;
  }

  private soon(): void {
    if (!this.kept) return;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.refresh(), PAUSE_MS);
  }

  /** A list that another program writes need not change what the checks find. */
  private soonAfter(file: vscode.Uri): void {
    const written = file.toString();
    if (written === this.kept?.list || written === this.kept?.old) this.soon();
  }

  private show(all: readonly TouchedItem[], kept: Kept): void {
    const sources = { ...kept.sources };
    for (const { key, touched } of all) sources[key] ??= digest(touched.source);
    const isDue = ({ key, touched }: TouchedItem) =>
      !kept.dismissed.includes(key) && (touched.isOpen || sources[key] === digest(touched.source));
    this.items = all.filter(isDue);
    this.keep({ ...kept, sources });
    this.tell();
  }

  private async files(): Promise<ReviseParams | { readonly problem: string } | undefined> {
    if (!this.kept) return undefined;
    try {
      return { list: await sent(this.kept.list), old: await sent(this.kept.old) };
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      return { problem: `A parts list cannot be read: ${reason}` };
    }
  }

  private keep(kept: Kept | undefined): void {
    this.kept = kept;
    void this.store.update(STORE, kept);
  }

  private tell(): void {
    const isOn = this.kept !== undefined;
    setContext("hasComparison", isOn);
    const isRenumbered = this.renumbered.length > 0;
    setContext("hasRenumbering", isRenumbered);
    this.changed.fire();
  }
}

async function sent(uri: string): Promise<SentFile> {
  const open = vscode.workspace.textDocuments.find((one) => one.uri.toString() === uri);
  const bytes = open
    ? new TextEncoder().encode(open.getText())
    : await vscode.workspace.fs.readFile(vscode.Uri.parse(uri));
  return { uri, base64: toBase64(bytes) };
}

/** Of things told alike each has its number; those of steps change with the text and do not count. */
function keyed(all: readonly SentTouched[]): TouchedItem[] {
  const counts = new Map<string, number>();
  return all.map((touched) => {
    const told = `${touched.kind} ${touched.message.replace(/\bstep [\d.]+\d/gi, "step")}`;
    const count = (counts.get(told) ?? 0) + 1;
    counts.set(told, count);
    return { key: `${told} ${count}`, touched };
  });
}

/** Enough to see whether a text is another one. */
function digest(text: string): number {
  let sum = 0;
  for (let i = 0; i < text.length; i++) sum = (sum * 31 + text.charCodeAt(i)) | 0;
  return sum;
}
