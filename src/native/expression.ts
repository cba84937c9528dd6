import jsep from 'jsep';

/** What the names and calls of an equation stand for in a sheet: each gives text that may stand in a formula. */
export interface Scope {
  name(name: string): string;
  call(name: string, args: readonly string[]): string;
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

const tests: ReadonlySet<string> = new Set(['==', '===', '!=', '!==', '<', '<=', '>', '>=', '&&', '||']);
const isTest = (node: jsep.Expression): boolean => node.type === 'BinaryExpression' && tests.has((node as jsep.BinaryExpression).operator);

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
      default:
        throw new Error(`an equation of ours holds ${node.type}, which no formula can`);
    }
  }

  #identifier(name: string): string {
    if (name === 'undefined') return '""';
    if (name === 'PI') return 'PI()';
    if (name === 'noAnswer') return 'NA()';
    return this.#scope.name(name.startsWith('$') ? (this.#names[Number(name.slice(1))] as string) : name);
  }

  #literal(value: unknown): Piece {
    return whole(typeof value === 'number' ? numeral(value) : quotedText(String(value)));
  }

  /** A minus holds tighter than a power in a spreadsheet, and looser in an equation. */
  #unary({ operator, argument }: jsep.UnaryExpression): Piece {
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
    const args = given.map((argument) => this.write(argument).text);
    const known = mathematics[name];
    const second = sizes[name];
    if (known) return whole(`${known}(${[...args, ...(second ? [second] : [])].join(',')})`);
    return whole(this.#scope.call(name, args));
  }
}

/** An equation in our names as the text of a native formula, without its `=`. */
export function nativeFormula(equation: string, scope: Scope): string {
  const { plain, names } = withPlainNames(equation);
  return new Writer(scope, names).write(jsep(plain)).text;
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
