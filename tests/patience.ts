/**
 * How long is waited before a test is given up, in milliseconds: for one thing to come, and for a whole test. They only end
 * what hangs: no test may hold or fail by how fast or how busy the machine is, so they are far longer than any of it takes.
 */
export const patience = { wait: 300_000, test: 1_800_000 } as const;
