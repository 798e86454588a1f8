/** Edits that are made when an action is chosen; at once for a client that cannot ask again. */
import { ResponseError } from "vscode-jsonrpc";
import type { CodeAction, WorkspaceEdit } from "vscode-languageserver";
import type { FeatureContext } from "../features/feature.ts";
import { ErrorCode } from "../values.ts";
import type { Offered } from "./offer.ts";

type Make = () => Promise<WorkspaceEdit | undefined>;

/** So many actions wait to be chosen. */
const MOST = 200;

export class LateEdits {
  readonly #context: FeatureContext;
  readonly #waiting = new Map<number, { uri: string; version: number | undefined; make: Make }>();
  #count = 0;

  constructor(context: FeatureContext) {
    this.#context = context;
  }

  /** Undefined for an action that would change nothing. */
  async toAction({ edit, ...action }: Offered, uri: string): Promise<CodeAction | undefined> {
    if (typeof edit !== "function") return { ...action, edit };
    if (this.#canWait) return { ...action, data: this.#keep(uri, edit) };
    const made = await edit();
    return made && { ...action, edit: made };
  }

  async resolve(action: CodeAction): Promise<CodeAction> {
    const waiting = this.#waiting.get(action.data as number);
    if (!waiting) return action;
    await this.#context.caughtUp();
    if (this.#context.service.version(waiting.uri) !== waiting.version) {
      throw new ResponseError(
        ErrorCode.ContentModified,
        "The text has changed meanwhile. Try again.",
      );
    }
    const edit = await waiting.make();
    return edit ? { ...action, edit } : action;
  }

  get #canWait(): boolean {
    const can = this.#context.client.textDocument?.codeAction;
    return can?.dataSupport === true && can.resolveSupport?.properties.includes("edit") === true;
  }

  #keep(uri: string, make: Make): number {
    const id = ++this.#count;
    this.#waiting.set(id, { uri, version: this.#context.service.version(uri), make });
    if (this.#waiting.size > MOST) this.#waiting.delete(this.#waiting.keys().next().value!);
    return id;
  }
}
