import { download, fileNameFor } from '../files/files.ts';

/** What gives a drawing its looks; written into the file, which knows no style sheet. */
const looks = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'paint-order',
  'font-family',
  'font-size',
  'font-weight',
  'text-anchor',
  'opacity',
] as const;

/** Times the drawing's own size: sharp on paper at 9 cm. */
const SCALE = 4;

/** The drawing as the text of a file of its own, with the looks that it has now. */
function standalone(svg: SVGSVGElement): string {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  const [, , width = 0, height = 0] = (svg.getAttribute('viewBox') ?? '').split(' ').map(Number);
  const originals = [svg, ...svg.querySelectorAll<SVGElement>('*')];
  const copies = [copy, ...copy.querySelectorAll<SVGElement>('*')];
  const gone: Element[] = [];
  originals.forEach((original, i) => {
    const style = getComputedStyle(original);
    const target = copies[i]!;
    if (style.display === 'none' && !original.closest('defs')) gone.push(target);
    for (const look of looks) {
      const value = style.getPropertyValue(look);
      const colour = (look === 'fill' || look === 'stroke') && !/^(none|url)/.test(value);
      if (value) target.setAttribute(look, colour ? plainColour(value) : value.replaceAll('"', "'"));
    }
    target.removeAttribute('class');
  });
  for (const element of gone) element.remove();
  const ground = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
  const around = getComputedStyle(svg.parentElement ?? svg).backgroundColor;
  for (const [name, value] of Object.entries({ width, height, fill: plainColour(around) }))
    ground.setAttribute(name, String(value));
  copy.insertBefore(ground, copy.firstChild);
  const title = document.createElementNS('http://www.w3.org/2000/svg', 'title');
  title.textContent = svg.getAttribute('aria-label');
  copy.insertBefore(title, copy.firstChild);
  copy.setAttribute('width', String(width));
  copy.setAttribute('height', String(height));
  return new XMLSerializer().serializeToString(copy);
}

let painter: CanvasRenderingContext2D | null = null;

/** A colour as every program reads it: mixtures and colour spaces are worked out. */
function plainColour(colour: string): string {
  painter ??= document.createElement('canvas').getContext('2d', { willReadFrequently: true });
  if (!painter) return colour;
  painter.clearRect(0, 0, 1, 1);
  painter.fillStyle = colour;
  painter.fillRect(0, 0, 1, 1);
  const [r, g, b, a = 255] = painter.getImageData(0, 0, 1, 1).data;
  return a === 255 ? `rgb(${r},${g},${b})` : `rgba(${r},${g},${b},${(a / 255).toFixed(3)})`;
}

export async function saveSvg(svg: SVGSVGElement, title: string): Promise<void> {
  download(standalone(svg), fileNameFor(title, '.svg'), 'image/svg+xml');
}

/** @throws Error with a sentence when the browser cannot paint the drawing */
export async function savePng(svg: SVGSVGElement, title: string): Promise<void> {
  const address = URL.createObjectURL(new Blob([standalone(svg)], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = image.naturalWidth * SCALE;
    canvas.height = image.naturalHeight * SCALE;
    canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
    if (!blob) throw new Error('The browser could not make a PNG of the figure. Save it as SVG instead.');
    download(blob, fileNameFor(title, '.png'), 'image/png');
  } finally {
    URL.revokeObjectURL(address);
  }
}
