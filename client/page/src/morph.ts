/**
 * Changes an element into another in place. What both have stays the same node, so that pictures do
 * not flicker and the focus stays where it is.
 */

/** `old` afterwards reads as `fresh`, whose nodes may be used up. */
export function morph(old: Element, fresh: Element): void {
  morphAttributes(old, fresh);
  morphChildren(old, fresh);
}

export function morphAttributes(old: Element, fresh: Element): void {
  for (const { name } of [...old.attributes]) {
    if (!fresh.hasAttribute(name)) old.removeAttribute(name);
  }
  for (const { name, value } of [...fresh.attributes]) {
    if (old.getAttribute(name) !== value) old.setAttribute(name, value);
  }
}

function morphChildren(old: Element, fresh: Element): void {
  let at = old.firstChild;
  for (const next of [...fresh.childNodes]) {
    if (at && isAlike(at, next)) {
      if (at instanceof Element) morph(at, next as Element);
      else if (at.nodeValue !== next.nodeValue) at.nodeValue = next.nodeValue;
      at = at.nextSibling;
    } else {
      old.insertBefore(next, at);
    }
  }
  while (at) {
    const following: ChildNode | null = at.nextSibling;
    at.remove();
    at = following;
  }
}

/** Pictures are the same only where they show the same file. */
function isAlike(a: Node, b: Node): boolean {
  if (a.nodeName !== b.nodeName) return false;
  if (!(a instanceof HTMLImageElement)) return true;
  return a.getAttribute("src") === (b as Element).getAttribute("src");
}
