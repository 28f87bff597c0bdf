/** A text as gzip bytes (RFC 1952). */
export const pack = (text: string): Promise<Uint8Array<ArrayBuffer>> =>
  through(new TextEncoder().encode(text), new CompressionStream('gzip'));

export const unpack = async (bytes: Uint8Array<ArrayBuffer>): Promise<string> =>
  new TextDecoder('utf-8', { fatal: true }).decode(await through(bytes, new DecompressionStream('gzip')));

async function through(
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
): Promise<Uint8Array<ArrayBuffer>> {
  const parts = new Blob([bytes]).stream().pipeThrough(stream);
  return new Uint8Array(await new Response(parts).arrayBuffer());
}
