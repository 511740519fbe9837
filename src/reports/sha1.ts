/** SHA-1, for names that are the same on every machine (RFC 9562 asks for it); nothing is kept secret or sealed by it. */

/** The 20 bytes of the hash. */
export function sha1(bytes: readonly number[]): number[] {
  const state = [0x67452301, 0xefcdab89, 0x98badcfe, 0x10325476, 0xc3d2e1f0];
  const padded = withLength(bytes);
  for (let block = 0; block < padded.length; block += 64) addBlock(state, padded.slice(block, block + 64));
  return state.flatMap((word) => [24, 16, 8, 0].map((shift) => (word >>> shift) & 0xff));
}

/** A one bit, noughts, and the number of bits at the end of the last block of 64 bytes. */
function withLength(bytes: readonly number[]): number[] {
  const noughts = (119 - (bytes.length % 64)) % 64;
  const bits = bytes.length * 8;
  const length = [0, 0, 0, Math.floor(bits / 2 ** 32), bits >>> 24, bits >>> 16, bits >>> 8, bits];
  return [...bytes, 0x80, ...Array<number>(noughts).fill(0), ...length.map((byte) => byte & 0xff)];
}

const turned = (word: number, by: number): number => (word << by) | (word >>> (32 - by));

function addBlock(state: number[], block: readonly number[]): void {
  const words = Array.from({ length: 16 }, (_, i) =>
    block.slice(i * 4, i * 4 + 4).reduce((word, byte) => (word << 8) | byte, 0),
  );
  for (let i = 16; i < 80; i += 1)
    words.push(
      turned(
        [3, 8, 14, 16].reduce((word, back) => word ^ (words[i - back] as number), 0),
        1,
      ),
    );
  let [a, b, c, d, e] = state as [number, number, number, number, number];
  for (const [i, word] of words.entries()) {
    const [mix, constant] = round(i, b, c, d);
    const next = (turned(a, 5) + mix + e + constant + word) | 0;
    [a, b, c, d, e] = [next, a, turned(b, 30), c, d];
  }
  for (const [i, word] of [a, b, c, d, e].entries()) state[i] = ((state[i] as number) + word) | 0;
}

function round(i: number, b: number, c: number, d: number): [mix: number, constant: number] {
  if (i < 20) return [(b & c) | (~b & d), 0x5a827999];
  if (i < 40) return [b ^ c ^ d, 0x6ed9eba1];
  if (i < 60) return [(b & c) | (b & d) | (c & d), 0x8f1bbcdc];
  return [b ^ c ^ d, 0xca62c1d6];
}
