/** What is used of the package, which brings no types. */
declare module 'saxen' {
  export class Parser {
    on(event: 'openTag', hear: (name: string, attributes: () => Record<string, string> | false) => void): this;
    on(event: 'closeTag' | 'text' | 'cdata' | 'attention', hear: (content: string) => void): this;
    on(event: 'error' | 'warn', hear: (fault: Error) => void): this;
    parse(xml: string): void;
  }
}
