/** A file's text, as webpack and vitest both hand it over. */
declare module '*?raw' {
  const text: string;
  export default text;
}
