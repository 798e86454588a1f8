/** What workbook and worksheets are read with: parts by name, texts with formatted runs. */
import type { XmlHandler } from "./xml.ts";

/** Reads the archive's part of this name. */
export type ReadPart = (name: string, handler: XmlHandler) => void;

export function isTrue(text: string | undefined): boolean {
  return text === "1" || text === "true";
}

/** Gathers the text of runs. */
export class RichText {
  #text = "";
  #isText = false;
  #aids = 0;

  get text(): string {
    return decodeEscapes(this.#text);
  }

  clear(): void {
    this.#text = "";
  }

  open(element: string): void {
    if (element === "rPh") this.#aids++;
    this.#isText = element === "t" && this.#aids === 0;
  }

  close(element: string): void {
    if (element === "rPh") this.#aids--;
    this.#isText = false;
  }

  add(part: string): void {
    if (this.#isText) this.#text += part;
  }
}

/** `_x000A_` stands for a character that XML cannot hold (ECMA-376 Part 1, 22.9.2.19). */
export function decodeEscapes(text: string): string {
  if (!text.includes("_x")) return text;
  return text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code) =>
    String.fromCharCode(Number.parseInt(code, 16)),
  );
}
