/** Nodes of the page. */

export function byId<Node extends Element = HTMLElement>(id: string): Node {
  return document.getElementById(id) as unknown as Node;
}

export function svgNode<Name extends keyof SVGElementTagNameMap>(name: Name, attributes: Readonly<Record<string, string>> = {}): SVGElementTagNameMap[Name] {
  const node = document.createElementNS('http://www.w3.org/2000/svg', name);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
  return node;
}

/** Only where it differs: an attribute that is set anew costs a layout even when it is the same. */
export function setAttribute(node: Element, name: string, value: string): void {
  if (node.getAttribute(name) !== value) node.setAttribute(name, value);
}

export function setText(node: Element, words: string): void {
  if (node.textContent !== words) node.textContent = words;
}

export function hide(node: Element, hidden: boolean): void {
  node.toggleAttribute('hidden', hidden);
}
