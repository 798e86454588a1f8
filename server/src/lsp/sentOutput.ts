/** A file of a publication as it goes to the client. */
import { base64 } from "../publish/base64.ts";
import { type Content, stretchesOf } from "../publish/content.ts";
import type { PublishedFile } from "../publish/outputs/output.ts";
import type { SentOutput } from "./protocol.ts";

export function sentOutput(file: PublishedFile): SentOutput {
  const { name, mark, titleMark } = file;
  const content = file.content();
  const sent =
    content instanceof Uint8Array
      ? { base64: new TextDecoder().decode(base64(content)) }
      : { text: textOf(content) };
  return { name, content: sent, mark, titleMark };
}

/** Stretches made late are ASCII. */
function textOf(content: Exclude<Content, Uint8Array>): string {
  const decoder = new TextDecoder();
  const texts = [...stretchesOf(content)].map((one) =>
    typeof one === "string" ? one : decoder.decode(one),
  );
  return texts.join("");
}
