/** The root: what a terminal sends reaches the session as it came, and what the session shows is drawn. */
import { render } from "ink-testing-library";
import { createElement } from "react";
import { expect, test } from "vitest";
import { openStart } from "../../src/console/start.ts";
import { Root, type Session, type View } from "../../src/screens/Root.tsx";
import { at } from "../helpers/typed-case.ts";
import { HOME, viewOf } from "./frame.ts";

const startView = (notice: string): View =>
  viewOf(
    { screen: "start", start: { ...openStart(HOME.protocols, notice), cases: [] }, home: HOME },
    at("07:00"),
  );

/** A session that only remembers what it was sent. */
function listening() {
  const sent: string[] = [];
  const watchers = new Set<() => void>();
  let view = startView("first");
  const session: Session = {
    received: (piece) => sent.push(piece),
    subscribe: (changed) => {
      watchers.add(changed);
      return () => watchers.delete(changed);
    },
    view: () => view,
  };
  const show = (next: View) => {
    view = next;
    for (const changed of watchers) changed();
  };
  return { session, sent, show };
}

const turn = () => new Promise((resolve) => setTimeout(resolve, 20));

test("pieces reach the session whole and in order, whatever Ink makes of them", async () => {
  const { session, sent } = listening();
  const { stdin, unmount } = render(createElement(Root, { session }));
  await turn();
  for (const piece of ["d300\r", "\x1b", "[A", "\x1b[200~5\r6\x1b[201~"]) stdin.write(piece);
  unmount();
  expect(sent).toEqual(["d300\r", "\x1b", "[A", "\x1b[200~5\r6\x1b[201~"]);
});

test("what the session shows next is drawn, and nothing is sent after the screen has gone", async () => {
  const { session, sent, show } = listening();
  const { stdin, lastFrame, unmount } = render(createElement(Root, { session }));
  await turn();
  expect(lastFrame()).toContain("first");
  show(startView("second"));
  await turn();
  expect(lastFrame()).toContain("second");
  unmount();
  stdin.write("b");
  expect(sent).toEqual([]);
});
