export const setUpTerminal = (_o: unknown) => {};
