// The console on the case it is given, with a screen that fails once three entries are on it.

import { openDesk } from "../../src/commands/case-desk.ts";
import { openSession } from "../../src/commands/session.ts";
import { show } from "../../src/commands/show.tsx";
import { runApp } from "../../src/console/app.ts";

const desk = openDesk(".");
const opened = await desk.hold(process.argv[2] as string);
if (opened.name !== "opened") throw new Error("the case could not be opened");
const session = openSession(desk, { app: runApp(opened, null), effects: [] });

let drawn = true;
process.exitCode = await show({
  ...session,
  // Ink leaves its subscription when the screen is given up: what asks then is no screen.
  subscribe(changed) {
    const leave = session.subscribe(changed);
    return () => {
      drawn = false;
      return leave();
    };
  },
  view() {
    const view = session.view();
    if (drawn && view.app.screen === "run" && view.app.model.file.entries.length > 3)
      throw new Error("the screen is broken");
    return view;
  },
});
