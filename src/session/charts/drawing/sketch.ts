import { el, type Shape } from '../../figure/drawing/svg-shape.ts';

/**
 * What the chart library draws on in place of a browser's document: it keeps elements as plain records. So a chart is the
 * same on the page, in a file and on the command line, and nothing in it can become markup.
 */
class Sketched {
  readonly ownerDocument: Sheet;
  readonly namespaceURI: string;
  readonly tag: string;
  readonly attributes = new Map<string, string>();
  children: (Sketched | string)[] = [];
  parentNode: Sketched | null = null;
  /** The page's policy forbids styles in elements; what the library would style is left to style sheets. */
  readonly style = { setProperty() {}, removeProperty() {} };

  constructor(ownerDocument: Sheet, namespaceURI: string, tag: string) {
    this.ownerDocument = ownerDocument;
    this.namespaceURI = namespaceURI;
    this.tag = tag;
  }
  setAttribute(name: string, value: unknown): void {
    this.attributes.set(name, String(value));
  }
  setAttributeNS(_space: string | null, name: string, value: unknown): void {
    this.setAttribute(name, value);
  }
  getAttribute(name: string): string | null {
    return this.attributes.get(name) ?? null;
  }
  removeAttribute(name: string): void {
    this.attributes.delete(name);
  }
  appendChild(child: Sketched | string): Sketched | string {
    return this.insertBefore(child, null);
  }
  insertBefore(child: Sketched | string, before: Sketched | null): Sketched | string {
    if (typeof child !== 'string') {
      const from = child.parentNode;
      if (from) from.children = from.children.filter((other) => other !== child);
      child.parentNode = this;
    }
    const index = before === null ? -1 : this.children.indexOf(before);
    this.children.splice(index < 0 ? this.children.length : index, 0, child);
    return child;
  }
  set textContent(text: string) {
    this.children = text === '' ? [] : [String(text)];
  }
}

class Sheet {
  readonly documentElement: Sketched = this.createElement('html');
  createElementNS(space: string, tag: string): Sketched {
    return new Sketched(this, space, tag);
  }
  createElement(tag: string): Sketched {
    return this.createElementNS('http://www.w3.org/1999/xhtml', tag);
  }
  createTextNode(text: string): string {
    return text;
  }
}

/** A fresh sheet for the library, which takes it for a document. */
export const blankSheet = (): Document => new Sheet() as unknown as Document;

/**
 * What was drawn, as shapes. The library's own style sheet is left out: its rules stand in ours. It names every group of
 * marks in a way that readers of the screen may not use (WAI-ARIA 1.2 forbids names on plain groups): the names stay as data.
 */
export const sketchedShape = (drawn: unknown): Shape => shapeOf(drawn as Sketched);

const shapeOf = ({ tag, attributes, children }: Sketched): Shape =>
  el(
    tag,
    tag === 'svg'
      ? { ...Object.fromEntries(attributes), role: 'img' }
      : Object.fromEntries(
          [...attributes].map(([name, value]) => [name === 'aria-label' ? 'data-mark' : name, value]),
        ),
    children.map((child) =>
      typeof child === 'string' ? child : child.tag === 'style' ? null : shapeOf(child),
    ),
  );
