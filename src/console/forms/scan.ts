/** What stands on a pack, typed or scanned: size, lot number and expiry. */

type OnPack = { size?: string; lot?: string; expires?: string };

/** GS1 element string as a scanner types it: product number (01), then expiry (17), lot (10), serial (21) in any order. */
const GS1 = /^(?:\]d2|\]C1)?\(?01\)?(\d{14})(.*)$/;
const DATED = /\(?17\)?(\d\d)(\d\d)(\d\d)/;
const LOT = /\(?10\)?([^()\s]{1,20})/;

/**
 * Reads a scanned code, else words: a day or month (2027-03, 2027-03-31) is the expiry, a size ends in Fr, mm or in or
 * is a fraction, and what is left is the lot. Source of the code's layout: GS1 General Specifications (from memory).
 */
export function readScan(text: string): OnPack {
  return scanned(text) ?? typed(text);
}

function scanned(text: string): OnPack | null {
  const found = GS1.exec(text.trim());
  if (!found) return null;
  let rest = found[2] ?? "";
  const date = /^\(?17\)?\d{6}/.test(rest) ? DATED.exec(rest) : null;
  if (date) rest = rest.slice(date[0].length);
  const lot = LOT.exec(rest)?.[1];
  return {
    ...(lot ? { lot } : { lot: found[1] ?? "" }),
    ...(date ? { expires: `20${date[1]}-${date[2]}${date[3] === "00" ? "" : `-${date[3]}`}` } : {}),
  };
}

function typed(text: string): OnPack {
  const words = text.trim().split(/\s+/);
  const expires = words.find((word) => /^\d{4}-\d\d(-\d\d)?$/.test(word));
  const size = words.find((word) => /^(\d+([.,]\d+)?(fr|mm|in|m2|ml|l)|\d+\/\d+)$/i.test(word));
  const lot = words.filter((word) => word !== expires && word !== size).join(" ");
  return { ...(size ? { size } : {}), ...(lot ? { lot } : {}), ...(expires ? { expires } : {}) };
}
