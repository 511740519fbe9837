// Reads damaged texts of one kind, from one seed to another, and tells what came of them.

import { adultProtocol } from "../../src/protocol/adult.ts";
import { checkProtocolText } from "../../src/protocol/check.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import type { CaseFile } from "../../src/record/case.ts";
import type { Entry } from "../../src/record/entry.ts";
import { caseBytes } from "../../src/store/case-bytes.ts";
import { caseFaults } from "../../src/store/case-faults.ts";
import { caseIn } from "../../src/store/read-case-file.ts";
import { salvaged } from "../../src/store/salvage.ts";
import { EVERY_KIND, written } from "../helpers/every-kind.ts";
import { aCase } from "../store/cases.ts";
import { damaged, diceFrom } from "./mutations.ts";

export type Asked = { readonly kind: "case" | "protocol"; readonly from: number; readonly to: number };

export type Told = {
  /** How many were still a case or a protocol. */
  readonly sound: number;
  /** Of how many of the others a case could be put together. */
  readonly recovered: number;
  /** Milliseconds that the slowest took. */
  readonly longest: number;
  /** Seeds that threw or gave no sentence. */
  readonly wrong: readonly string[];
};

/** Putting together is slow, and half of it is reading: a part of the files is enough. */
const SALVAGED = 10;

/** One line that ends; nothing in it that a terminal would obey. */
const SENTENCE = /^[^\p{Cc}\p{Zl}\p{Zp}]*\.$/u;

/** A protocol with the first and the last of everything: so small that damage hits what matters. */
const smallProtocol = (): Protocol => {
  const protocol = small(adultProtocol) as Protocol;
  return { ...protocol, circuit: { ...protocol.circuit, prime: protocol.circuit.prime.slice(0, 1) } };
};

const small = (value: unknown): unknown => {
  if (Array.isArray(value)) return (value.length > 2 ? [value[0], value.at(-1)] : value).map(small);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [key, key === "source" ? "s" : small(inner)]),
  );
};

/** A case with an entry of every kind, as the program writes it. */
function smallCase(): string {
  const entries = EVERY_KIND.map((draft, place) => ({ ...written(place + 1), ...draft }) as Entry);
  const file: CaseFile = { ...aCase(), protocol: smallProtocol(), entries: entries.slice(0, 26) };
  return Buffer.concat([...caseBytes()(file)]).toString();
}

/** The text that is damaged. */
export const soundText = (kind: Asked["kind"]): string =>
  kind === "case" ? smallCase() : JSON.stringify(smallProtocol(), null, 1);

function readAll({ kind, from, to }: Asked): Told {
  const text = soundText(kind);
  const read = kind === "case" ? caseFault : protocolFault;
  const wrong: string[] = [];
  let [sound, recovered, longest] = [0, 0, 0];
  for (let seed = from; seed < to; seed++) {
    const one = damaged(text, diceFrom(seed));
    const began = performance.now();
    try {
      const fault = read(one);
      if (fault === null) sound += 1;
      else if (!SENTENCE.test(fault)) wrong.push(`seed ${seed}: ${JSON.stringify(fault)}`);
      if (kind === "case" && fault !== null && seed % SALVAGED === 0 && salvaged([one]) !== null)
        recovered += 1;
    } catch (error) {
      wrong.push(`seed ${seed} threw ${error}`);
    }
    longest = Math.max(longest, performance.now() - began);
  }
  return { sound, recovered, longest, wrong };
}

function caseFault(text: string): string | null {
  const read = caseIn(text);
  return read.ok ? (caseFaults(read.value)[0] ?? null) : read.fault;
}

function protocolFault(text: string): string | null {
  const checked = checkProtocolText(text);
  return checked.ok
    ? null
    : checked.faults
        .map(({ place, says }) => `${place} ${says}`)
        .join("; ")
        .concat(".");
}

process.on("message", (asked: Asked) => process.send?.(readAll(asked)));
