/** What a failure of the disk means, in plain words. */

const WORDS: Readonly<Record<string, string>> = {
  ENOSPC: "the disk is full",
  EDQUOT: "the disk space allowed to this user is used up",
  EFBIG: "the file is larger than the disk takes",
  EROFS: "the folder may not be written to",
  EACCES: "the folder may not be written to",
  EPERM: "the folder may not be written to",
  ENOENT: "the folder is gone",
  ENOTDIR: "a file stands where the folder should be",
  EEXIST: "a file stands where the folder should be",
  EISDIR: "a folder stands where the file should be",
  EBUSY: "another program is using the file",
  EMFILE: "too many files are open",
  ENFILE: "too many files are open",
  ENOMEM: "the computer has no memory left",
  ENAMETOOLONG: "the name of the file is too long",
  ELOOP: "the folder leads back to itself",
  EIO: "the disk reports a fault",
  ENODEV: "the disk is gone",
  ENXIO: "the disk is gone",
  ESTALE: "the shared folder is not reachable",
  ETIMEDOUT: "the shared folder does not answer",
  ENOTCONN: "the shared folder is not reachable",
  EHOSTDOWN: "the shared folder is not reachable",
  EHOSTUNREACH: "the shared folder is not reachable",
};

const READING_WORDS: Readonly<Record<string, string>> = {
  ...WORDS,
  ENOENT: "there is no such file",
  ENOTDIR: "there is no such file",
  EISDIR: "it is a folder, not a case file",
  EACCES: "this user may not read it",
  EPERM: "this user may not read it",
};

const REFUSAL = "Refusal";

/** An error whose message is already in plain words, for places where only throwing is possible. */
export const refusal = (words: string): Error => Object.assign(new Error(words), { name: REFUSAL });

/** A refusal of a file that was whole once: other copies may take its place. */
export const damage = (words: string): Error => Object.assign(refusal(words), { isDamage: true });

export const isDamage = (error: unknown): boolean =>
  (error as { isDamage?: unknown } | null | undefined)?.isDamage === true;

/** Why writing failed, without a full stop. Never a path or a stack: either could name a patient. */
export const faultWords = (error: unknown): string => wordsFrom(WORDS, error);

/** Why reading failed, without a full stop. */
export const readingFaultWords = (error: unknown): string => wordsFrom(READING_WORDS, error);

/** The code of a system error, such as `ENOSPC`; `undefined` for anything else. */
export function codeOf(error: unknown): string | undefined {
  const code = (error as { code?: unknown } | null | undefined)?.code;
  return typeof code === "string" ? code : undefined;
}

function wordsFrom(table: Readonly<Record<string, string>>, error: unknown): string {
  if (error instanceof Error && error.name === REFUSAL) return error.message;
  const code = codeOf(error);
  if (code === undefined) return "something in the program went wrong";
  return table[code] ?? `the disk answered ${code}`;
}
