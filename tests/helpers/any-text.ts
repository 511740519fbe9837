/** Texts a person, a slip or a wicked file could put on an entry line. */
import fc from "fast-check";

const pieces = fc.constantFrom(
  ...["300", "1.2L", "1,2l", "28k", "280mg", "=450", "300+", "0", "99999999", "1,200", "-5", "1e9", "٣٠٠"],
  ...[
    "a",
    "l",
    "r",
    "s",
    "g",
    "c",
    "u",
    "on",
    "off",
    "ok",
    "full",
    "3/4",
    "1/2",
    "ca",
    "m",
    "back",
    "!",
    "! slip",
  ],
  ...["@10:42", "@-3", "@-0:40", "@25:00", "@", "@-", ";", "; note", "#2", "#e3", "#99", "/AB", "p80", "t8"],
  ...[
    "constructor",
    "__proto__",
    "toString",
    "hasOwnProperty",
    "5constructor",
    "noradrenaline",
    "flow=4.5",
    "MAP=",
  ],
  ...["\x1b[2J", "\u202e", "\ud83d", "🫀", "冷却", '"', "\\", "\0", "\n", "\t"],
);

/** Lines that some stroke takes, before a slip. */
const meant = fc.constantFrom(
  ...["", "on", "300", "300 a", "300 l", "900+", "28k", "512", "full", "3/4", "4.5", "32", "500 c", "=450"],
  ...[
    "400 u",
    "s",
    "ca",
    "d",
    "20",
    "15 gas",
    "ok",
    "a few words",
    "norad 10",
    "#2 300",
    "#3 ! slip",
    "@-3",
    "back",
  ],
);

/** Any string at all, pieces of the grammar in any order, and lines that mean something with a slip behind them. */
export const anyText = fc.oneof(
  { weight: 3, arbitrary: meant },
  { weight: 3, arbitrary: fc.tuple(meant, pieces).map((words) => words.join(" ")) },
  { weight: 3, arbitrary: fc.array(pieces, { maxLength: 6 }).map((words) => words.join(" ")) },
  { weight: 1, arbitrary: fc.array(pieces, { maxLength: 4 }).map((words) => words.join("")) },
  { weight: 1, arbitrary: fc.string({ unit: "grapheme", maxLength: 40, size: "max" }) },
  { weight: 1, arbitrary: fc.string({ unit: "binary", maxLength: 600, size: "max" }) },
);
