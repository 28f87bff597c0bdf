/** Opens a picture or film that stays on this machine: what it is, how large, its fingerprint, and something to draw from. */
import { sha256 } from '@noble/hashes/sha2.js';
import type { PictureCopy } from '../../session/picture/copy.ts';
import type { Observation } from '../../session/picture/points.ts';

export interface Medium {
  readonly is: 'picture' | 'film';
  readonly name: string;
  readonly hash: string;
  /** Its own size, in the units that points are placed in. */
  readonly width: number;
  readonly height: number;
  /** What is shown and drawn from: a canvas with the picture, or the film. */
  readonly element: HTMLCanvasElement | HTMLVideoElement;
  /** Time of the frame that a picture shows, s, where it is one of a film. */
  readonly frame?: number;
  /** It is the book’s small copy, not the file itself. */
  readonly copy?: true;
  close(): void;
}

const MB = 1024 * 1024;
const limit = { picture: 60 * MB, film: 1024 * MB, pixels: 60e6, side: 16_384 } as const;
/** A picture is drawn from at most so many pixels: more would only cost memory. */
const drawn = 24e6;

/** @throws Error with a sentence: what arrived, what is accepted, what to do */
export async function openMedium(file: File, progress: (share: number) => void): Promise<Medium> {
  const head = new Uint8Array(await file.slice(0, 256 * 1024).arrayBuffer());
  const kind = kindOf(head);
  if (kind === 'svg')
    throw new Error(`${file.name} is a drawing (SVG). Open a photo (JPEG, PNG or WebP) or a film.`);
  const isFilm = kind === null && (file.type.startsWith('video/') || looksLikeFilm(head));
  if (kind === null && !isFilm)
    throw new Error(
      `${file.name} is not a picture or film this browser knows. Open a JPEG, PNG or WebP photo, or an MP4 or WebM film.`,
    );
  const most = isFilm ? limit.film : limit.picture;
  if (file.size > most)
    throw new Error(
      `${file.name} is ${Math.round(file.size / MB)} MB; ${isFilm ? 'films' : 'pictures'} up to ${most / MB} MB are opened. Save a smaller copy and open that.`,
    );
  if (kind) checkSize(file.name, sizeOf(head, kind));
  const hash = await fingerprint(file, progress);
  return isFilm ? film(file, hash) : picture(file, hash);
}

type Kind = 'jpeg' | 'png' | 'webp';

function kindOf(bytes: Uint8Array): Kind | 'svg' | null {
  const text = String.fromCharCode(...bytes.subarray(0, 512));
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'jpeg';
  if (text.startsWith('\x89PNG\r\n\x1a\n')) return 'png';
  if (text.startsWith('RIFF') && text.slice(8, 12) === 'WEBP') return 'webp';
  return /<svg[\s>]/i.test(text) ? 'svg' : null;
}

/** ISO base media (MP4, MOV), Matroska and WebM, Ogg. */
function looksLikeFilm(bytes: Uint8Array): boolean {
  const text = String.fromCharCode(...bytes.subarray(0, 12));
  return text.slice(4, 8) === 'ftyp' || text.startsWith('\x1aE\xdf\xa3') || text.startsWith('OggS');
}

/** Width and height as the file's own head says, before anything is unpacked; null where the head does not say. */
function sizeOf(bytes: Uint8Array, kind: Kind): readonly [number, number] | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const has = (at: number) => at <= bytes.length;
  if (kind === 'png') return has(24) ? [view.getUint32(16), view.getUint32(20)] : null;
  if (kind === 'webp') {
    const chunk = String.fromCharCode(...bytes.subarray(12, 16));
    const three = (at: number) => bytes[at]! | (bytes[at + 1]! << 8) | (bytes[at + 2]! << 16);
    if (chunk === 'VP8X' && has(30)) return [three(24) + 1, three(27) + 1];
    if (chunk === 'VP8 ' && has(30))
      return [view.getUint16(26, true) & 0x3fff, view.getUint16(28, true) & 0x3fff];
    if (chunk === 'VP8L' && has(25)) {
      const bits = view.getUint32(21, true);
      return [(bits & 0x3fff) + 1, ((bits >> 14) & 0x3fff) + 1];
    }
    return null;
  }
  for (let at = 2; has(at + 9); ) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1]!;
    // frames of a JPEG, but for the tables between them (DHT, JPG, DAC)
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return [view.getUint16(at + 7), view.getUint16(at + 5)];
    at += 2 + view.getUint16(at + 2);
  }
  return null;
}

function checkSize(name: string, size: readonly [number, number] | null): void {
  if (!size) return;
  const [width, height] = size;
  if (width * height > limit.pixels || Math.max(width, height) > limit.side)
    throw new Error(
      `${name} has ${width} × ${height} pixels; up to ${limit.pixels / 1e6} megapixels are opened. Save a smaller copy and open that.`,
    );
}

/** SHA-256 in slices, so that a long film neither fills the memory nor holds the page up. */
async function fingerprint(file: Blob, progress: (share: number) => void): Promise<string> {
  const hash = sha256.create();
  const step = 2 * MB;
  for (let from = 0; from < file.size; from += step) {
    hash.update(new Uint8Array(await file.slice(from, from + step).arrayBuffer()));
    progress(Math.min(1, (from + step) / file.size));
    await new Promise((resolve) => setTimeout(resolve));
  }
  return Array.from(hash.digest(), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/**
 * The small copy that a book has of a picture, in place of the file: points keep the picture's own coordinates. A book may
 * come from anywhere, so the copy is looked at as a file is. @throws Error with a sentence
 */
export async function openCopy(copy: PictureCopy, { file, hash, time }: Observation): Promise<Medium> {
  const bytes = Uint8Array.from(atob(copy.jpeg), (character) => character.charCodeAt(0));
  const name = `The copy of ${file || 'the picture'} in this book`;
  if (kindOf(bytes) !== 'jpeg')
    throw new Error(`${name} is not a JPEG picture. Remove it, or open the file itself.`);
  checkSize(name, sizeOf(bytes, 'jpeg'));
  const shown = await picture(new File([bytes], name), hash);
  const { width, height } = copy;
  return { ...shown, name: file, width, height, copy: true, ...(time === null ? {} : { frame: time }) };
}

/** The first image of the file, upright as its orientation says; an animated one stays on that. */
async function picture(file: File, hash: string): Promise<Medium> {
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    throw new Error(
      `${file.name} is cut short or damaged: the browser cannot show it. Save it again and open that.`,
    );
  }
  const { width, height } = bitmap;
  const shrink = Math.min(1, Math.sqrt(drawn / (width * height)));
  const element = document.createElement('canvas');
  element.width = Math.round(width * shrink);
  element.height = Math.round(height * shrink);
  element.getContext('2d')!.drawImage(bitmap, 0, 0, element.width, element.height);
  bitmap.close();
  return {
    is: 'picture',
    name: file.name,
    hash,
    width,
    height,
    element,
    close: () => {
      element.width = 0;
      element.height = 0;
    },
  };
}

async function film(file: File, hash: string): Promise<Medium> {
  const element = document.createElement('video');
  const address = URL.createObjectURL(file);
  const close = () => {
    element.pause();
    element.removeAttribute('src');
    element.load();
    URL.revokeObjectURL(address);
  };
  element.muted = true;
  element.playsInline = true;
  element.preload = 'auto';
  element.src = address;
  try {
    await new Promise<void>((resolve, reject) => {
      element.addEventListener('loadeddata', () => resolve(), { once: true });
      element.addEventListener('error', () => reject(new Error('no film')), { once: true });
    });
    if (element.videoWidth === 0) throw new Error('no picture in it');
    // A film recorded by a page does not say how long it is until its end was looked for.
    if (!Number.isFinite(element.duration)) await seek(element, 1e7).then(() => seek(element, 0));
  } catch {
    close();
    throw new Error(
      `This browser cannot play ${file.name}. Save the film as MP4 (H.264) or WebM, or open a single picture of it.`,
    );
  }
  return {
    is: 'film',
    name: file.name,
    hash,
    width: element.videoWidth,
    height: element.videoHeight,
    element,
    close,
  };
}

/** Moves a film to a time and waits until that frame shows. */
export function seek(element: HTMLVideoElement, time: number): Promise<void> {
  return new Promise((resolve) => {
    element.addEventListener('seeked', () => resolve(), { once: true });
    element.currentTime = time;
  });
}
