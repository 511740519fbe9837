// The encryption itself: against published vectors, any content, any passphrase, and every change to what was kept.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { newSafe, safeFitting } from "../../src/store/encrypting-safe.ts";
import { type Envelope, envelopeIn, unfolded } from "../../src/store/envelope.ts";
import { COST, keyFrom, passphraseFault, SHORTEST_PASSPHRASE } from "../../src/store/passphrase-key.ts";
import { isEncrypted, plain } from "../../src/store/safe.ts";
import { aSafe, othersSafe, PASSPHRASE, put, textIn } from "./safes.ts";

const hex = (text: string): Buffer => Buffer.from(text.replaceAll(/\s/g, ""), "hex");
const base64 = (text: string): string => Buffer.from(text).toString("base64");

describe("the key is that of scrypt in RFC 7914, section 12 (its first 32 bytes)", () => {
  test.each([
    ["", "", 16, 1, 1, "77d6576238657b203b19ca42c18a0497f16b4844e3074ae8dfdffa3fede21442"],
    ["password", "NaCl", 1024, 8, 16, "fdbabe1c9d3472007856e7190d01e9fe7c6ad7cbc8237830e77376634b373162"],
    [
      "pleaseletmein",
      "SodiumChloride",
      16_384,
      8,
      1,
      "7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2",
    ],
  ])("of %j with %j", async (passphrase, salt, n, r, p, expected) => {
    const key = await keyFrom(passphrase, { n, r, p, salt: base64(salt) });
    expect(key.toString("hex")).toBe(expected);
  });
});

test("what is in an envelope is what test case 16 of McGrew and Viega, The Galois/Counter Mode of Operation, gives", () => {
  const envelope: Envelope = {
    making: { ...COST, salt: "" },
    iv: hex("cafebabefacedbaddecaf888"),
    head: hex("feedfacedeadbeef feedfacedeadbeef abaddad2"),
    body: hex(`522dc1f099567d07f47f37a32a84427d 643a8cdcbfe5c0c97598a2bd2555d1aa
      8cb08e48590dbb3da7b08b1056828838 c5f61e6393ba7a0abcc9f662`),
    tag: hex("76fc6ece0f4e1768cddf8853bb2d551b"),
  };
  const key = hex("feffe9928665731c6d6a8f9467308308 feffe9928665731c6d6a8f9467308308");
  const content = unfolded(key, envelope);
  expect(content && Buffer.from(content).toString("hex")).toBe(
    hex(`d9313225f88406e5a55909c5aff5269a 86a7a9531534f7da2e4c303d8a318a72
      1c3c0c95956809532fcf0e2449a6b525 b16aedf5aa0de657ba637b39`).toString("hex"),
  );
});

describe("a safe", () => {
  test("gives back any bytes, in whatever parts they were put in, and shows none of them", async () => {
    const parts = fc.array(fc.uint8Array({ maxLength: 300 }), { maxLength: 5 });
    await fc.assert(
      fc.asyncProperty(parts, async (given) => {
        const kept = Buffer.concat([...aSafe.put(given)]);
        const content = Buffer.concat(given);
        expect(Buffer.from(await aSafe.take(kept)).equals(content)).toBe(true);
        expect(isEncrypted(kept)).toBe(true);
        if (content.length > 8) expect(kept.includes(content)).toBe(false);
      }),
      { numRuns: 500 },
    );
  });

  test("keeps the same twice as two files that share nothing but how they were made", () => {
    const [one, other] = [put(aSafe, "same"), put(aSafe, "same")].map((kept) => envelopeIn(kept));
    expect(one?.making).toEqual(other?.making);
    expect(one?.iv).not.toEqual(other?.iv);
    expect(one?.body).not.toEqual(other?.body);
  });

  test("leaves what was never encrypted as it is", async () => {
    expect(await textIn(aSafe, Buffer.from("{}"))).toBe("{}");
    expect(await textIn(plain, Buffer.from("{}"))).toBe("{}");
  });

  test("of nobody who chose a passphrase opens nothing that is encrypted", async () => {
    await expect(plain.take(put(aSafe, "x"))).rejects.toThrow("it is encrypted, and no passphrase was given");
  });

  test("of another folder says that the passphrase is another", async () => {
    await expect(othersSafe.take(put(aSafe, "x"))).rejects.toThrow(
      "it was encrypted with another passphrase than the one given, or is damaged",
    );
  });

  test("of the same passphrase opens what comes from another folder", async () => {
    const elsewhere = await newSafe(PASSPHRASE);
    expect(await textIn(elsewhere, put(aSafe, "from elsewhere"))).toBe("from elsewhere");
  });
});

describe("a passphrase", () => {
  /** Keys that cost nothing: what the words come to is the same. */
  const cheapKey = async (words: string) =>
    (await keyFrom(words, { n: 16, r: 1, p: 1, salt: "" })).toString("hex");

  test("gives one key however it was put together from signs (NFKC), and other words give another", async () => {
    const words = fc.string({ unit: "grapheme", minLength: 1, maxLength: 40 });
    await fc.assert(
      fc.asyncProperty(words, words, async (one, other) => {
        const key = await cheapKey(one);
        for (const form of ["NFC", "NFD", "NFKC", "NFKD"] as const)
          expect(await cheapKey(one.normalize(form))).toBe(key);
        const isSame = one.normalize("NFKC") === other.normalize("NFKC");
        expect((await cheapKey(other)) === key).toBe(isSame);
      }),
    );
  });

  test.each([
    ["with spaces before, between and behind", "  two  words and more  ", "two words and more"],
    ["in Greek with accents", "Καρδιοπνευμονική παράκαμψη", "Καρδιοπνευμονικη παρακαμψη"],
    ["with a heart in it", "🫀 beats 🫀 beats 🫀", "🫀 beats 🫀 beats"],
  ])("%s opens what it closed, and a near one does not", async (_, words, near) => {
    const keyhole = envelopeIn(put(await newSafe(words), "content"));
    expect(await safeFitting(near, keyhole)).toBeNull();
    const again = await safeFitting(words.normalize("NFD"), keyhole);
    expect(again?.encrypts).toBe(true);
  });

  test.each([
    ["x".repeat(SHORTEST_PASSPHRASE - 1), /too short: take at least 16 characters/],
    // Two code points each, which come to one.
    ["é".normalize("NFD").repeat(10), /too short/],
    ["x".repeat(1001), /no more than 1000 characters/],
    ["x".repeat(SHORTEST_PASSPHRASE), null],
    ["a b c d e f g h ", null],
  ])("%j can be chosen or not, with a reason", (words, fault) => {
    const said = passphraseFault(words);
    if (fault === null) expect(said).toBeNull();
    else expect(said).toMatch(fault);
  });
});

describe("an envelope that was changed", () => {
  const kept = put(aSafe, "heparin 28000");
  const line = kept.indexOf("\n");
  const facts = JSON.parse(kept.subarray(0, line).toString("utf8"));
  const told = (bytes: Uint8Array) =>
    aSafe.take(bytes).then(
      (content) => ({ content: Buffer.from(content).toString("latin1") }),
      ({ name, message }: Error) => ({ name, message }),
    );
  const withFacts = (changed: object): Buffer =>
    Buffer.concat([Buffer.from(JSON.stringify({ ...facts, ...changed })), kept.subarray(line)]);
  const salt = kept.indexOf(facts.salt);

  test("in any bit of any byte is a refusal in words, or no envelope any more", async () => {
    const inSalt = (place: number) => place >= salt && place < salt + facts.salt.length;
    for (let place = 0; place < kept.length; place++) {
      // A key for each of those would take its time; the next test has some.
      if (inSalt(place)) continue;
      for (let bit = 0; bit < 8; bit++) {
        const changed = Buffer.from(kept);
        changed[place] = (changed[place] as number) ^ (1 << bit);
        const said = await told(changed);
        if (isEncrypted(changed)) expect(said).toMatchObject({ name: "Refusal" });
        else expect(said).toEqual({ content: changed.toString("latin1") });
      }
    }
  });

  test("in its salt is another's, and no more than so many keys are made for that", async () => {
    for (let place = 0; place < 22; place++) {
      const changed = Buffer.from(kept);
      changed[salt + place] = changed[salt + place] === 0x41 ? 0x42 : 0x41;
      expect(await told(changed)).toMatchObject({
        message: expect.stringMatching(
          /^it (was encrypted with another passphrase|is from yet another folder|is encrypted and damaged)/,
        ),
      });
    }
    expect(await textIn(aSafe, kept)).toBe("heparin 28000");
    // Keys are made slowly, and on purpose.
  }, 120_000);

  test("by being cut short or added to is damaged", async () => {
    for (let length = '{"format":"pumpside-encrypted",'.length; length < kept.length; length++)
      expect(await told(kept.subarray(0, length))).toMatchObject({
        message: expect.stringMatching(/an encrypted file can't be read in part$/),
      });
    expect(await told(Buffer.concat([kept, Buffer.from("x")]))).toMatchObject({ name: "Refusal" });
  });

  test.each([
    ["so much memory that it does harm", { n: 2 ** 30 }],
    ["blocks without end", { r: 2 ** 24 }],
    ["the work a million times over", { p: 2 ** 20 }],
    ["hardly any work", { n: 2 }],
    ["work that is no power of two", { n: 2 ** 17 + 1 }],
    ["less than nothing", { n: -1 }],
  ])("to ask for %s is refused before any work", async (_, changed) => {
    expect(await told(withFacts(changed))).toMatchObject({
      message: "it asks for another way to make a key than this program takes (scrypt's n, r and p)",
    });
  });

  test.each([
    ["half a number", { n: 1.5 }],
    ["no number", { n: "131072" }],
    ["a short salt", { salt: "AAAA" }],
    ["a salt in another spelling", { salt: facts.salt.replaceAll("=", "") }],
    ["a long iv", { iv: Buffer.alloc(16).toString("base64") }],
    ["another cipher", { cipher: "aes-256-ctr" }],
    ["something more", { hint: "the dog" }],
    ["an older version", { version: 0 }],
  ])("to hold %s is damaged", async (_, changed) => {
    expect(await told(withFacts(changed))).toMatchObject({
      message: expect.stringMatching(/^it is encrypted and damaged/),
    });
  });

  test("to be of a newer version is said to be", async () => {
    expect(await told(withFacts({ version: 2 }))).toMatchObject({
      message: "it was encrypted by a newer version of this program",
    });
  });
});
