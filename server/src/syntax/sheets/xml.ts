/**
 * XML as a stream of elements, within limits. The parser is strict and knows no entities but XML's
 * own five, so that declared ones can neither expand nor be fetched.
 */
import { SaxesParser } from "saxes";
import { Refused } from "./refused.ts";

/** Attributes by their names as written, prefix included. */
export type Attributes = Readonly<Record<string, string>>;

/** Hears of a document's parts in turn; names of elements come without prefix. */
export interface XmlHandler {
  /** `position`: in UTF-16 units, behind the closing quotation mark. */
  attribute?(name: string, value: string, position: number): void;
  /** `position`: behind the tag. */
  open?(name: string, attributes: Attributes, position: number): void;
  close?(name: string, position: number): void;
  text?(text: string): void;
}

const LIMITS = { depth: 200, attributes: 200 };

/** Reads a document to its end. Throws Refused with `fault` when it is not well-formed or too deep. */
export function readXml(text: Iterable<string>, handler: XmlHandler, fault: string): void {
  const parser = new SaxesParser<{ xmlns: false; position: false }>({
    xmlns: false,
    position: false,
  });
  const refuse = () => {
    throw new Refused(fault, parser.position);
  };
  let depth = 0;
  let attributes = 0;
  parser.on("error", refuse);
  parser.on("doctype", (declared) => {
    if (declared.includes("[")) throw new Refused(DECLARES, parser.position);
  });
  parser.on("opentagstart", () => {
    attributes = 0;
    if (++depth > LIMITS.depth) refuse();
  });
  parser.on("attribute", ({ name, value }) => {
    if (++attributes > LIMITS.attributes) refuse();
    handler.attribute?.(name, value, parser.position);
  });
  parser.on("opentag", (tag) =>
    handler.open?.(localName(tag.name), tag.attributes, parser.position),
  );
  parser.on("closetag", (tag) => {
    depth--;
    handler.close?.(localName(tag.name), parser.position);
  });
  const add = (part: string) => handler.text?.(part);
  parser.on("text", add);
  parser.on("cdata", add);
  for (const part of text) parser.write(part);
  parser.close();
}

const DECLARES =
  "The file declares entities or rules of its own (`<!DOCTYPE … [`), which no parts list needs, so it is not read. Delete the declaration, or write the list as CSV.";

/** The name without its namespace prefix. */
export function localName(name: string): string {
  return name.slice(name.indexOf(":") + 1);
}

/** The value of an attribute, whatever prefix its name has. */
export function attributeOf(attributes: Attributes, name: string): string | undefined {
  for (const key in attributes) if (localName(key) === name) return attributes[key];
  return undefined;
}

/** Bytes of an XML document as text: UTF-8, or UTF-16 by its byte-order mark (XML 1.0, 4.3.3). */
export function* decodeXml(portions: Iterable<Uint8Array>): Generator<string, void, void> {
  let decoder: TextDecoder | undefined;
  for (const bytes of portions) {
    decoder ??= new TextDecoder(encodingOf(bytes));
    yield decoder.decode(bytes, { stream: true });
  }
  if (decoder) yield decoder.decode();
}

function encodingOf([first, second]: Uint8Array): string {
  if (first === 0xff && second === 0xfe) return "utf-16le";
  return first === 0xfe && second === 0xff ? "utf-16be" : "utf-8";
}
