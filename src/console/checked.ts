/** Words that may stand in any line about something given: `/AB` the second person's initials, `#…` a unit number. */

export type Checked = { readonly checkedBy?: string; readonly unitNumber?: string };

/** Takes these words out of a line. A unit number may come from a scanner, which is a keyboard. */
export function readChecked(words: readonly string[]): Checked & { readonly words: readonly string[] } {
  const person = words.find((word) => /^\/[a-z]{1,8}$/i.test(word));
  const unit = words.find((word) => /^#\S{3,40}$/.test(word));
  return {
    words: words.filter((word) => word !== person && word !== unit),
    ...(person ? { checkedBy: person.slice(1).toUpperCase() } : {}),
    ...(unit ? { unitNumber: unit.slice(1) } : {}),
  };
}
