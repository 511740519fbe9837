// A bare Ink program: what any console on Ink has to load before it can draw.

import { render, Text } from "ink";

render(<Text>hello there</Text>, { alternateScreen: true, interactive: true });
setInterval(() => {}, 1000);
