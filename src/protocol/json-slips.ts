/** Slips of somebody who writes JSON by hand, and how each is put right. */

export type Expected = "value" | "value or ]" | "name" | "name or }" | ":" | ", or end" | "nothing";

/** `at` counts characters from the beginning of the text. */
export type Slip = { readonly at: number; readonly says: string; readonly suggestion: string };

/** Brackets within brackets; a protocol needs six. */
export const DEEPEST = 20;

/** The text stops at a place (from nought) before all brackets are closed. */
export const endsEarly = (at: number): Slip => ({
  at,
  says: "the text ends before its brackets are closed",
  suggestion: "complete the file, or take an undamaged copy",
});

/** Brackets within brackets beyond what any protocol has, at a place (from nought). */
export const tooDeep = (at: number): Slip => ({
  at,
  says: `brackets stand more than ${DEEPEST} deep in one another`,
  suggestion: "start again from a shipped protocol, which needs six",
});

/** The slip at a character that does not belong where it stands. */
export function slipAt(text: string, at: number, expected: Expected): Slip {
  const sign = text[at] ?? "";
  const [says, suggestion] = whateverWasExpected(sign, expected) ?? SLIPS[expected](sign);
  return { at, says, suggestion };
}

type Words = readonly [says: string, suggestion: string];

function whateverWasExpected(sign: string, expected: Expected): Words | null {
  if ("/#".includes(sign)) {
    return ["a comment stands here, and JSON has none", 'put the words into a "source" or take them out'];
  }
  if ("'‘’“”„«»`".includes(sign))
    return ["the quotation mark is not the plain one", 'write " before and after'];
  const textMayStand = expected.startsWith("value") || expected.startsWith("name");
  if (sign === '"' && textMayStand) {
    return [
      "a text is not closed, or holds a line break or a lone backslash",
      'close it with " on the same line',
    ];
  }
  return null;
}

const nameSlip = (sign: string): Words => {
  if (/\d/.test(sign)) return ["a number stands where a name belongs", "write decimals with a point: 2.4"];
  if ("}]".includes(sign)) return ["a comma stands before a closing bracket", "take the comma away"];
  return ["a name in quotation marks belongs here", 'write "name": value'];
};

const valueSlip = (sign: string): Words => {
  if ("}]".includes(sign))
    return ["a value is missing before a closing bracket", "add it, or take away what asks for it"];
  if (/[-+.\d]/.test(sign))
    return ["the number is not written as JSON has it", "write it plainly: 0.5, 300, -3"];
  return ["a value belongs here", "put words between quotation marks; numbers, true and false stand alone"];
};

const SLIPS: Readonly<Record<Expected, (sign: string) => Words>> = {
  value: valueSlip,
  "value or ]": valueSlip,
  name: nameSlip,
  "name or }": nameSlip,
  ":": () => ['a ":" is missing between a name and its value', 'write "name": value'],
  ", or end": () => ["a comma or a closing bracket is missing", "put a comma between one value and the next"],
  nothing: () => ["more text follows after the last bracket", "take it out"],
};
