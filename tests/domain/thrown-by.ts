/** What a call throws, to be looked at whole; its answer where it throws nothing. */
export function thrownBy(call: () => unknown): unknown {
  try {
    return call();
  } catch (thrown) {
    return thrown;
  }
}
