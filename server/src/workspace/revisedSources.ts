/** Sources in which another file stands for one parts list of a guide: how the list was, or will be. */
import type { Overrides } from "../model/list/columns.ts";
import { loadPartsList } from "../model/list/load.ts";
import type { PartsList } from "../model/list/partsList.ts";
import type { Files } from "./files.ts";
import { sheetUri } from "./paths.ts";
import { Sources, type Wanted } from "./sources.ts";

/** The content of a parts list, and of a workbook the sheet that is meant. */
export interface ListContent {
  readonly content: Uint8Array | string;
  readonly sheet?: string;
}

export class RevisedSources extends Sources {
  readonly #uri: string;
  readonly #content: ListContent;
  readonly #known = new Map<string, PartsList>();

  /** `uri`: of the list that is replaced, as `PartsList.uri` gives it. */
  constructor(files: Files, uri: string, content: ListContent) {
    super(files);
    this.#uri = uri;
    this.#content = content;
  }

  override async list(uri: string, columns: Overrides, sheet?: string): Promise<Wanted<PartsList>> {
    if (sheetUri(uri, sheet) !== this.#uri) return super.list(uri, columns, sheet);
    const key = JSON.stringify(columns);
    const known = this.#known.get(key);
    if (known) return { kind: "found", value: known };
    const { content, sheet: meant } = this.#content;
    const options = { columns, ...(meant !== undefined && { sheet: meant }) };
    const list = await loadPartsList(this.#uri, content, options);
    this.#known.set(key, list);
    return { kind: "found", value: list };
  }
}
