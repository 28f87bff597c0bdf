/** Whole numbers below 2^32 in a fixed order (xorshift), the same wherever whole numbers are. */
export function drawing(seed: number): () => number {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 4294967296;
  };
}

/** Sign, exponent and all 52 bits. */
export function bitsOf(value: number): string {
  const [low, high] = new Uint32Array(new Float64Array([value]).buffer);
  return `${high!.toString(16)} ${low!.toString(16)}`;
}
