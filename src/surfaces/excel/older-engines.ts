/** The methods that our functions use and ECMAScript 2016 lacks; an engine that has one keeps its own. */
const add = (to: object, methods: Record<string, unknown>): void => {
  for (const name of Object.keys(methods)) {
    if (!(name in to)) Object.defineProperty(to, name, { value: methods[name], writable: true, configurable: true });
  }
};

type Keyed = Record<string, unknown>;

add(Object, {
  entries: (from: Keyed) => Object.keys(from).map((key) => [key, from[key]]),
  values: (from: Keyed) => Object.keys(from).map((key) => from[key]),
  fromEntries(pairs: Iterable<[string, unknown]>) {
    const made: Keyed = {};
    for (const [key, value] of pairs) made[key] = value;
    return made;
  },
});
add(Array.prototype, {
  flat(this: unknown[]) {
    return ([] as unknown[]).concat(...this);
  },
  flatMap(this: unknown[], each: (item: unknown, k: number) => unknown) {
    return ([] as unknown[]).concat(...this.map(each));
  },
  at(this: unknown[], k: number) {
    return this[k < 0 ? this.length + k : k];
  },
  findLast(this: unknown[], fits: (item: unknown) => boolean) {
    return this.slice().reverse().find(fits);
  },
  findLastIndex(this: unknown[], fits: (item: unknown, k: number) => boolean) {
    let k = this.length;
    while (k-- > 0 && !fits(this[k], k));
    return k;
  },
  toReversed(this: unknown[]) {
    return this.slice().reverse();
  },
});
