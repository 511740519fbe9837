/** The yardstick for the screen: a bare Ink program, bundled as the console is, with a clock that ticks once a second. */
import { render, Text } from "ink";
import { useEffect, useState } from "react";

function Hello() {
  const [now, tick] = useState(() => new Date());
  useEffect(() => {
    const ticking = setInterval(() => tick(new Date()), 1000);
    return () => clearInterval(ticking);
  }, []);
  return <Text>{`hello there ${now.toISOString().slice(11, 19)}`}</Text>;
}

/** Settles when it ends. */
export const ended = render(<Hello />, {
  alternateScreen: true,
  incrementalRendering: true,
  interactive: true,
  maxFps: 60,
}).waitUntilExit();
