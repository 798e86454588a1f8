/** Where texts and parts lists come from: the editor's text wins over the file. */
import type { Overrides } from "../model/list/columns.ts";
import { loadPartsList } from "../model/list/load.ts";
import type { PartsList } from "../model/list/partsList.ts";
import { decodeText } from "../text/decode.ts";
import { LineIndex } from "../text/lines.ts";
import { FileError, type Files } from "./files.ts";
import { sheetUri } from "./paths.ts";
import { bytesProblem, textProblem } from "./rewriting.ts";
import { OpenText } from "./texts.ts";

/** What became of the wish for a file. */
export type Wanted<Value> =
  | { readonly kind: "found"; readonly value: Value }
  | { readonly kind: "missing" }
  /** It is there but is not read; the message says why. */
  | { readonly kind: "refused"; readonly message: string };

export class Sources {
  readonly files: Files;
  readonly #open = new Map<string, OpenText>();
  readonly #bytes = new Map<string, Promise<Wanted<Uint8Array>>>();
  readonly #existing = new Map<string, Promise<boolean>>();
  readonly #lists = new Map<string, { source: string | Uint8Array; list: PartsList }>();
  readonly #lines = new Map<string, { text: string; lines: LineIndex }>();

  constructor(files: Files) {
    this.files = files;
  }

  open(uri: string, version: number, text: string): void {
    this.#open.set(uri, new OpenText(version, text));
  }

  opened(uri: string): OpenText | undefined {
    return this.#open.get(uri);
  }

  /** Closes the editor's text; the file counts again. */
  close(uri: string): void {
    this.#open.delete(uri);
    this.forget(uri);
  }

  /** Drops what is known of the file, so that it is read again. */
  forget(uri: string): void {
    this.#bytes.delete(uri);
    this.#existing.delete(uri);
    this.#lines.delete(uri);
  }

  /** The text of a page. */
  async page(uri: string): Promise<Wanted<string>> {
    const open = this.#open.get(uri);
    if (open) return { kind: "found", value: open.text };
    const read = await this.#read(uri);
    // It may have been opened while the file was read.
    const opened = this.#open.get(uri);
    if (opened) return { kind: "found", value: opened.text };
    if (read.kind !== "found") return read;
    const decoded = decodeText(read.value);
    return "text" in decoded
      ? { kind: "found", value: decoded.text }
      : { kind: "refused", message: decoded.problem };
  }

  /** The parts list at the URI; of a workbook the one in the sheet, whose name the list's URI then has. */
  async list(uri: string, columns: Overrides, sheet?: string): Promise<Wanted<PartsList>> {
    const open = this.#open.get(uri);
    // A workbook that an editor shows as text is no text.
    const read: Wanted<string | Uint8Array> =
      open && !open.source.slice(0, 4).startsWith("PK\x03\x04")
        ? { kind: "found", value: open.text }
        : await this.#read(uri);
    if (read.kind !== "found") return read;
    const own = sheetUri(uri, sheet);
    const key = `${own}\n${JSON.stringify(columns)}`;
    const known = this.#lists.get(key);
    if (known?.source === read.value) return { kind: "found", value: known.list };
    const options = { columns, ...(sheet !== undefined && { sheet }) };
    const list = await loadPartsList(own, read.value, options);
    this.#lists.set(key, { source: read.value, list });
    return { kind: "found", value: list };
  }

  /** Whether there is a file or an open text. */
  async exists(uri: string): Promise<boolean> {
    if (this.#open.has(uri)) return true;
    const known = this.#existing.get(uri);
    if (known) return known;
    const asking = this.files.exists(uri);
    this.#existing.set(uri, asking);
    return asking;
  }

  /** The bytes of a picture; they are not kept. */
  picture(uri: string): Promise<Wanted<Uint8Array>> {
    return readFile(this.files, uri);
  }

  /**
   * Why an editor that changed a word in the file could not write the rest back byte for byte;
   * undefined where it could.
   */
  async rewriteProblem(uri: string): Promise<string | undefined> {
    const open = this.#open.get(uri);
    if (open) return textProblem(open.text);
    const read = await this.#read(uri);
    if (read.kind === "missing") return "there is no such file";
    return read.kind === "found" ? bytesProblem(read.value) : read.message;
  }

  /** Lines of a text that may not be open, for counting places in it. */
  lines(uri: string, text: string): LineIndex {
    const known = this.#lines.get(uri);
    if (known?.text === text) return known.lines;
    const lines = new LineIndex(text);
    this.#lines.set(uri, { text, lines });
    return lines;
  }

  #read(uri: string): Promise<Wanted<Uint8Array>> {
    const known = this.#bytes.get(uri);
    if (known) return known;
    const reading = readFile(this.files, uri);
    this.#bytes.set(uri, reading);
    return reading;
  }
}

async function readFile(files: Files, uri: string): Promise<Wanted<Uint8Array>> {
  try {
    const value = await files.read(uri);
    return value ? { kind: "found", value } : { kind: "missing" };
  } catch (error) {
    if (error instanceof FileError) return { kind: "refused", message: error.message };
    throw error;
  }
}
