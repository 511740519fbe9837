/** Bytes that are added to at the end and handed out without copying: in pieces, so that growing moves none of them. */

type GrowingBytes = {
  add(text: string): void;
  clear(): void;
  /** All bytes so far, one piece after the other; they stay as they are until `clear`. */
  pieces(): readonly Uint8Array[];
};

/** Each piece takes a write of its own: a long case gets few, a short one no more room than it needs. */
const LARGEST_PIECE = 512 * 1024;

/** Empty, with room for so many bytes to begin with. */
export function growingBytes(room = 64 * 1024): GrowingBytes {
  let full: Uint8Array[] = [];
  let last = Buffer.allocUnsafe(room);
  let length = 0;

  const beginPiece = (needed: number) => {
    full.push(last.subarray(0, length));
    last = Buffer.allocUnsafe(Math.max(needed, Math.min(last.length * 2, LARGEST_PIECE)));
    length = 0;
  };

  return {
    add(text) {
      const needed = Buffer.byteLength(text);
      if (length + needed > last.length) beginPiece(needed);
      length += last.write(text, length);
    },
    clear() {
      full = [];
      length = 0;
    },
    pieces: () => [...full, last.subarray(0, length)],
  };
}
