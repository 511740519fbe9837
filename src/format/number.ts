/** Numbers as text. A figure that is not known is a dash, never a nought. */

export const UNKNOWN = "–";

/** Rounded for display with a fixed number of decimals; a dash for `null`. */
export function fixed(value: number | null, decimals = 0): string {
  if (value === null || !Number.isFinite(value)) return UNKNOWN;
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

/** As few decimals as the value needs, three at the most: `300`, `4.36`. */
export const plain = (value: number): string => String(Number(value.toFixed(3)));

/** Thousands set apart by a thin gap a terminal can show: `28 000`. */
export const grouped = (value: number | null): string => fixed(value).replace(/\B(?=(\d{3})+(?!\d))/g, " ");

/** With its sign, for balances: `+1230`, `-200`, `0`. */
export function signed(value: number | null): string {
  const text = fixed(value);
  return value !== null && value > 0 && text !== "0" ? `+${text}` : text;
}
