/** Bytes that are added to at the end and handed out without copying. */

type GrowingBytes = {
  add(text: string): void;
  clear(): void;
  /** All bytes so far; they stay as they are until `clear`. */
  bytes(): Uint8Array;
};

/** Empty, with room for so many bytes to begin with. */
export function growingBytes(room = 64 * 1024): GrowingBytes {
  let buffer = Buffer.allocUnsafe(room);
  let length = 0;

  const makeRoom = (needed: number) => {
    if (needed <= buffer.length) return;
    const larger = Buffer.allocUnsafe(Math.max(needed, buffer.length * 2));
    buffer.copy(larger, 0, 0, length);
    buffer = larger;
  };

  return {
    add(text) {
      makeRoom(length + Buffer.byteLength(text));
      length += buffer.write(text, length);
    },
    clear() {
      buffer = Buffer.allocUnsafe(room);
      length = 0;
    },
    bytes: () => buffer.subarray(0, length),
  };
}
