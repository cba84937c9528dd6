import jsep from 'jsep';

/** What is asked of a call that has more than one answer: one of its steps, or what a word such as `row` picks from its table. */
export interface Asked {
  readonly word: string;
  readonly args: readonly string[];
}

/** What the names and calls of an equation stand for in a sheet: each gives text that may stand in a formula. */
export interface Scope {
  name(name: string): string;
  call(name: string, args: readonly string[], asked?: Asked): string;
}

/** How tightly a piece of formula holds together, by the rules that every spreadsheet program shares. */
const holds = { comparison: 1, joined: 2, sum: 3, product: 4, power: 5, whole: 6 } as const;
type Hold = (typeof holds)[keyof typeof holds];

interface Piece {
  readonly text: string;
  readonly hold: Hold;
}

const whole = (text: string): Piece => ({ text, hold: holds.whole });
const inside = ({ text, hold }: Piece, least: number): string => (hold < least ? `(${text})` : text);

/** Signs of our equations in the spreadsheet's spelling, with how they hold. */
const signs: Readonly<Record<string, readonly [sign: string, hold: Hold]>> = {
  '==': ['=', holds.comparison],
  '===': ['=', holds.comparison],
  '!=': ['<>', holds.comparison],
  '!==': ['<>', holds.comparison],
  '<': ['<', holds.comparison],
  '<=': ['<=', holds.comparison],
  '>': ['>', holds.comparison],
  '>=': ['>=', holds.comparison],
  '+': ['+', holds.sum],
  '-': ['-', holds.sum],
  '*': ['*', holds.product],
  '/': ['/', holds.product],
  '**': ['^', holds.power],
};

const joined: Readonly<Record<string, string>> = { '&&': 'AND', '||': 'OR' };

/** Functions of plain mathematics, by the names that our equations and every spreadsheet program give them. */
const mathematics: Readonly<Record<string, string>> = {
  abs: 'ABS',
  ceil: 'CEILING',
  exp: 'EXP',
  floor: 'INT',
  log: 'LN',
  max: 'MAX',
  min: 'MIN',
  round: 'ROUND',
  sqrt: 'SQRT',
};

/** What rounding needs beside its number: no digits behind the point; to the next whole. */
const sizes: Readonly<Record<string, string>> = { round: '0', ceil: '1' };

/** Numbers as every locale's file stores them: a dot, no digit lost. */
const numeral = (value: number): string => String(value).replace('e', 'E');
export const quotedText = (text: string): string => `"${text.replaceAll('"', '""')}"`;

const bracketed = /\[([^\]]+)\]/g;

/** Names that hold spaces stand in brackets; the parser gets a plain name in their place. */
function withPlainNames(equation: string): { readonly plain: string; readonly names: readonly string[] } {
  const names: string[] = [];
  const plain = equation.replace(bracketed, (_, name: string) => `$${names.push(name) - 1}`);
  return { plain, names };
}

function dotted(node: jsep.Expression): string {
  if (node.type === 'Identifier') return (node as jsep.Identifier).name;
  const { object, property } = node as jsep.MemberExpression;
  return `${dotted(object)}.${dotted(property)}`;
}

/** Words by which an equation picks from the table that a function of ours gives. */
const isTableWord = (name: string): boolean => ['row', 'span', 'trials', 'last', 'worth'].includes(name);

/** `FAMILY.NAME(…)`: a call of one of our functions. */
const isOurs = (node: jsep.Expression | undefined): node is jsep.CallExpression =>
  node?.type === 'CallExpression' && (node as jsep.CallExpression).callee.type === 'MemberExpression';

const tests: ReadonlySet<string> = new Set(['==', '===', '!=', '!==', '<', '<=', '>', '>=', '&&', '||']);

/** Whether a piece of an equation is true or false by itself: a comparison, its contrary, or a question such as `isGiven`. */
function isTest(node: jsep.Expression): boolean {
  if (node.type === 'BinaryExpression') return tests.has((node as jsep.BinaryExpression).operator);
  if (node.type === 'UnaryExpression') return (node as jsep.UnaryExpression).operator === '!';
  return node.type === 'CallExpression' && dotted((node as jsep.CallExpression).callee).startsWith('is');
}

class Writer {
  readonly #scope: Scope;
  readonly #names: readonly string[];

  constructor(scope: Scope, names: readonly string[]) {
    this.#scope = scope;
    this.#names = names;
  }

  write(node: jsep.Expression): Piece {
    switch (node.type) {
      case 'Literal':
        return this.#literal((node as jsep.Literal).value);
      case 'Identifier':
        return whole(this.#identifier((node as jsep.Identifier).name));
      case 'UnaryExpression':
        return this.#unary(node as jsep.UnaryExpression);
      case 'BinaryExpression':
        return this.#binary(node as jsep.BinaryExpression);
      case 'ConditionalExpression':
        return this.#choice(node as jsep.ConditionalExpression);
      case 'CallExpression':
        return this.#call(node as jsep.CallExpression);
      case 'MemberExpression':
        return this.#stepOf(node as jsep.MemberExpression);
      default:
        throw new Error(`an equation of ours holds ${node.type}, which no formula can`);
    }
  }

  #identifier(name: string): string {
    if (name === 'undefined') return '""';
    if (name === 'PI') return 'PI()';
    if (name === 'noAnswer' || name === 'none') return 'NA()';
    return this.#scope.name(name.startsWith('$') ? (this.#names[Number(name.slice(1))] as string) : name);
  }

  #literal(value: unknown): Piece {
    return whole(typeof value === 'number' ? numeral(value) : quotedText(String(value)));
  }

  /** A minus holds tighter than a power in a spreadsheet, and looser in an equation. */
  #unary({ operator, argument }: jsep.UnaryExpression): Piece {
    if (operator === '!') return whole(`NOT(${this.#test(argument)})`);
    if (operator !== '-') throw new Error(`an equation of ours holds the sign ${operator}`);
    return whole(`(-${inside(this.write(argument), holds.power)})`);
  }

  #binary({ operator, left, right }: jsep.BinaryExpression): Piece {
    const joiner = joined[operator];
    if (joiner) return whole(`${joiner}(${this.#test(left)},${this.#test(right)})`);
    const [sign, hold] = signs[operator] ?? [];
    if (!sign || !hold) throw new Error(`an equation of ours holds the sign ${operator}`);
    // Powers go from the left in a spreadsheet and from the right in an equation.
    const least = operator === '**' ? holds.whole : hold;
    const leastRight = operator === '-' || operator === '/' ? hold + 1 : least;
    return { text: `${inside(this.write(left), least)}${sign}${inside(this.write(right), leastRight)}`, hold };
  }

  #test(node: jsep.Expression): string {
    const { text } = this.write(node);
    return isTest(node) ? text : `AND(ISNUMBER(${text}),${text}<>0)`;
  }

  #choice({ test, consequent, alternate }: jsep.ConditionalExpression): Piece {
    return whole(`IF(${this.#test(test)},${this.write(consequent).text},${this.write(alternate).text})`);
  }

  #call({ callee, arguments: given }: jsep.CallExpression): Piece {
    const name = dotted(callee);
    const [table, ...rest] = given;
    if (isOurs(table) && isTableWord(name)) return this.#asking(table, { word: name, args: this.#texts(rest) });
    const args = this.#texts(given);
    const known = mathematics[name];
    const second = sizes[name];
    if (known) return whole(`${known}(${[...args, ...(second ? [second] : [])].join(',')})`);
    return whole(this.#scope.call(name, args));
  }

  /** `hygieneScore(…).weighted` */
  #stepOf({ object, property }: jsep.MemberExpression): Piece {
    if (object.type !== 'CallExpression') throw new Error('an equation of ours names a step of what is no call');
    return this.#asking(object as jsep.CallExpression, { word: 'step', args: [quotedText((property as jsep.Identifier).name)] });
  }

  #asking({ callee, arguments: given }: jsep.CallExpression, asked: Asked): Piece {
    return whole(this.#scope.call(dotted(callee), this.#texts(given), asked));
  }

  #texts(nodes: readonly jsep.Expression[]): readonly string[] {
    return nodes.map((node) => this.write(node).text);
  }
}

interface Parsed {
  readonly node: jsep.Expression;
  readonly names: readonly string[];
}

/** A table of halvings asks for the same few equations row after row. */
const parsed = new Map<string, Parsed>();

function parse(equation: string): Parsed {
  const known = parsed.get(equation);
  if (known) return known;
  const { plain, names } = withPlainNames(equation);
  const found = { node: jsep(plain), names };
  parsed.set(equation, found);
  return found;
}

/** An equation in our names as the text of a native formula, without its `=`. */
export function nativeFormula(equation: string, scope: Scope): string {
  const { node, names } = parse(equation);
  return new Writer(scope, names).write(node).text;
}

/** The names that an equation uses, bracketed ones too, functions left out. */
export function namesIn(equation: string): readonly string[] {
  const found = new Set<string>();
  nativeFormula(equation, {
    name: (name) => {
      found.add(name);
      return name;
    },
    call: (name, args) => `${name}(${args.join(',')})`,
  });
  return [...found];
}
