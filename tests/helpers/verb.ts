// A verb called in this process, with what it says and the code it ends with.

import { vi } from "vitest";
import { runCommandLine } from "../../src/commands/command-line.ts";

export type Called = { readonly code: number; readonly out: string; readonly complaint: string };

/** Calls `pumpside` with these words. */
export async function called(...words: string[]): Promise<Called> {
  const said = { out: "", complaint: "" };
  const listening = (to: keyof typeof said) => (text: string | Uint8Array) => {
    said[to] += text.toString();
    return true;
  };
  const out = vi.spyOn(process.stdout, "write").mockImplementation(listening("out"));
  const complaint = vi.spyOn(process.stderr, "write").mockImplementation(listening("complaint"));
  try {
    return { code: await runCommandLine(words, "0.0.0"), ...said };
  } finally {
    out.mockRestore();
    complaint.mockRestore();
  }
}
