/** Text in plain ASCII, for systems that take nothing else: the signs of the trade spelt out, accents left off. */

const SPELT: Readonly<Record<string, string>> = {
  "–": "-",
  "—": "-",
  "−": "-",
  "×": "x",
  "·": "|",
  "°": "",
  "²": "2",
  "³": "3",
  "⁻": "-",
  "⁵": "5",
  µ: "u",
  μ: "u",
  π: "pi",
  "≥": ">=",
  "≤": "<=",
  "→": "->",
  "…": "...",
  "’": "'",
  "‘": "'",
  "“": '"',
  "”": '"',
  ß: "ss",
  æ: "ae",
  Æ: "Ae",
  ø: "o",
  Ø: "O",
  ł: "l",
  Ł: "L",
};

/** Each sign spelt as it may be; what cannot be spelt is a question mark. Line ends and form feeds stay. */
export const asciiOf = (text: string): string =>
  [...text.replace(/[^\x20-\x7e\n\f]/gu, (sign) => SPELT[sign] ?? sign).normalize("NFD")]
    .filter((sign) => !/\p{M}/u.test(sign))
    .map((sign) => (/[\x20-\x7e\n\f]/.test(sign) ? sign : "?"))
    .join("");
