/** A piece of a drawing or of a page as plain data: the page turns it into elements, the command line into text. */
export interface Shape {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly (Shape | string)[];
}

type Child = Shape | string | number | null | false | undefined | readonly Child[];

/** Makes a shape; attributes that are undefined and children that are nothing are left out. */
export function el(
  tag: string,
  attributes: Readonly<Record<string, string | number | undefined>> = {},
  ...children: readonly Child[]
): Shape {
  return {
    tag,
    attributes: Object.fromEntries(
      Object.entries(attributes).filter((pair): pair is [string, string | number] => pair[1] !== undefined),
    ),
    children: flat(children),
  };
}

function flat(children: readonly Child[]): (Shape | string)[] {
  return children.flatMap((child): (Shape | string)[] => {
    if (child === null || child === undefined || child === false) return [];
    if (typeof child === 'number') return [String(child)];
    if (typeof child === 'string') return [child];
    return 'tag' in child ? [child] : flat(child);
  });
}

/** HTML elements that have no end tag. */
const single = new Set(['meta', 'br', 'hr', 'link', 'img', 'input']);

/** A shape as HTML or SVG text, everything escaped. */
export function shapeText({ tag, attributes, children }: Shape): string {
  const given = Object.entries(attributes)
    .map(([name, value]) => ` ${name}="${escaped(String(value))}"`)
    .join('');
  if (single.has(tag)) return `<${tag}${given}>`;
  const inner = children.map((child) => (typeof child === 'string' ? escaped(child) : shapeText(child)));
  return `<${tag}${given}>${inner.join('')}</${tag}>`;
}

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** A text that cannot end where it stands: for content and quoted attributes alike. Control characters are dropped. */
export const escaped = (text: string): string =>
  text
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these have no place in a page
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g, '')
    .replace(/[&<>"']/g, (sign) => entities[sign]!);
