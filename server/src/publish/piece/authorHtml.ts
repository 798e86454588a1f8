/**
 * The author's own HTML as part of the tree. Markdown leaves it as pieces of source between its own
 * nodes; here they become elements around those nodes. Nothing of it is trusted: it is cleaned later.
 */
import type { Element, ElementContent, Properties, Root } from "hast";
import { Parser } from "htmlparser2";
import { HOLE_TAG } from "./holes.ts";

type Parent = Element | Root;

/** The tree with HTML in place of its source. Blocks of ours close what HTML has left open. */
export function withAuthorHtml(root: Root): Root {
  weave(root);
  return root;
}

function weave(parent: Parent): void {
  const children = parent.children as ElementContent[];
  for (const child of children) if (child.type === "element") weave(child);
  if (children.some((child) => child.type === "raw")) {
    parent.children = new Weaver().weave(children);
  }
}

/** Deeper elements are left out: no page needs them, and no text may exhaust the stack. */
const MOST_OPEN = 50;

/** Attributes that the tree calls otherwise. */
const PROPERTIES: Readonly<Record<string, string>> = { colspan: "colSpan", rowspan: "rowSpan" };

class Weaver {
  readonly #top: ElementContent[] = [];
  readonly #open: Element[] = [];
  readonly #parser = new Parser(
    {
      onopentag: (name, attributes) => this.#begin(name, attributes),
      onclosetag: (name) => this.#end(name),
      ontext: (text) => this.#add({ type: "text", value: text }),
    },
    { recognizeSelfClosing: true },
  );

  weave(children: readonly ElementContent[]): ElementContent[] {
    for (const child of children) {
      // What is open stays open: a tag that ends a line belongs to what follows.
      if (child.type === "raw") this.#parser.write(child.value);
      else {
        if (child.type === "element" && child.data?.flow) this.#open.length = 0;
        this.#add(child);
      }
    }
    return this.#top;
  }

  #add(node: ElementContent): void {
    (this.#open.at(-1)?.children ?? this.#top).push(node);
  }

  #begin(name: string, attributes: Readonly<Record<string, string>>): void {
    if (name === HOLE_TAG || this.#open.length >= MOST_OPEN) return;
    const properties: Properties = {};
    for (const [key, value] of Object.entries(attributes)) {
      properties[PROPERTIES[key] ?? key] = value;
    }
    // A heading in HTML would break the outline that stages make.
    const tagName = /^h[1-6]$/.test(name) ? "p" : name;
    const element: Element = { type: "element", tagName, properties, children: [] };
    this.#add(element);
    this.#open.push(element);
  }

  #end(name: string): void {
    const tagName = /^h[1-6]$/.test(name) ? "p" : name;
    const index = this.#open.findLastIndex((element) => element.tagName === tagName);
    if (index >= 0) this.#open.length = index;
  }
}
