/** Where JSON text breaks off being JSON: the line as it stands in the file, and what is wrong in words. */
export interface JsonFault {
  /** From 1. */
  readonly line: number;
  readonly column: number;
  /** The line about the fault, cut to what fits a message, and a caret under the fault. */
  readonly excerpt: string;
  readonly caret: string;
  readonly what: string;
}

/** Letters of the line shown before and after the fault. */
const before = 40;
const after = 30;

/** Deeper than any scene, and shallow enough to be followed by calls. */
const deepest = 500;

const word = /[A-Za-z0-9_.+-]+/y;
const numberText = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?/y;
const escapes = '"\\/bfnrt';

/**
 * Finds the first place at which text is not JSON (RFC 8259), for a message that does not hang on the words of one JavaScript
 * engine; null when the text is JSON, or nests deeper than any scene does. Reads the text once.
 */
export function jsonFault(text: string): JsonFault | null {
  let at = 0;

  const fail = (what: string, where = at): never => {
    throw new Fault(where, what);
  };
  const skip = () => {
    while (at < text.length && ' \t\n\r'.includes(text[at])) at++;
  };
  const found = (): string => (at >= text.length ? 'the file ends' : `there is ${JSON.stringify(text[at])}`);

  function value(depth: number): void {
    if (depth > deepest) throw new TooDeep();
    const first = text[at];
    if (first === '{') members(depth);
    else if (first === '[') entries(depth);
    else if (first === '"') string();
    else scalar();
  }

  function scalar(): void {
    word.lastIndex = at;
    const read = word.exec(text)?.[0] ?? '';
    if (read === 'true' || read === 'false' || read === 'null') {
      at += read.length;
      return;
    }
    numberText.lastIndex = at;
    const number = numberText.exec(text)?.[0] ?? '';
    if (number !== '' && number === read) {
      at += number.length;
      return;
    }
    if (/^[+-]?[.0-9]/.test(read)) {
      fail(
        `${shown(read)} is not a number: JSON writes 0.5 and -2, without a leading + or 0 and with digits on both sides of the point`,
      );
    }
    if (read !== '')
      fail(`${shown(read)} is no value: text goes in "double quotes", and there are true, false and null`);
    fail(`a value is missing: ${found()}`);
  }

  function string(): void {
    const opened = at++;
    for (; at < text.length; at++) {
      const letter = text[at];
      if (letter === '"') {
        at++;
        return;
      }
      if (letter < ' ') fail('text goes on over the end of the line: a closing " is missing', opened);
      if (letter !== '\\') continue;
      at++;
      if (text[at] === 'u' && /^[0-9a-fA-F]{4}$/.test(text.slice(at + 1, at + 5))) at += 4;
      else if (!escapes.includes(text[at] ?? ' '))
        fail('a backslash that begins nothing: write \\\\ for one backslash', at - 1);
    }
    fail('text without its closing "', opened);
  }

  function members(depth: number): void {
    const opened = at++;
    skip();
    if (text[at] === '}') {
      at++;
      return;
    }
    for (;;) {
      if (text[at] !== '"') {
        if (at >= text.length) fail('this { has no closing }', opened);
        fail(
          text[at] === '}'
            ? 'a comma before the closing } has nothing after it'
            : `the name of a field in "double quotes" is missing: ${found()}`,
        );
      }
      string();
      skip();
      if (text[at] !== ':') fail(`a : is missing after the name of the field: ${found()}`);
      at++;
      skip();
      value(depth + 1);
      if (closed('}', opened)) return;
    }
  }

  function entries(depth: number): void {
    const opened = at++;
    skip();
    if (text[at] === ']') {
      at++;
      return;
    }
    for (;;) {
      if (at >= text.length) fail('this [ has no closing ]', opened);
      if (text[at] === ']') fail('a comma before the closing ] has nothing after it');
      value(depth + 1);
      if (closed(']', opened)) return;
    }
  }

  /** After an entry: true at the end of its list or object, false after a comma. */
  function closed(bracket: '}' | ']', opened: number): boolean {
    skip();
    if (at >= text.length) fail(`this ${text[opened]} has no closing ${bracket}`, opened);
    const letter = text[at];
    if (letter !== ',' && letter !== bracket) fail(`a comma or ${bracket} is missing: ${found()}`);
    at++;
    skip();
    return letter === bracket;
  }

  try {
    skip();
    if (at >= text.length) fail('the file is empty');
    value(0);
    skip();
    if (at < text.length) fail(`the scene is over, and more text follows: ${found()}`);
    return null;
  } catch (error) {
    if (error instanceof Fault) return placed(text, error.at, error.what);
    if (error instanceof TooDeep) return null;
    throw error;
  }
}

class Fault {
  readonly at: number;
  readonly what: string;
  constructor(at: number, what: string) {
    this.at = at;
    this.what = what;
  }
}

class TooDeep {}

const shown = (read: string): string => (read.length > before ? `${read.slice(0, before)}…` : read);

/** A place in the text as line, column and the line itself, with everything that is not a plain letter made a blank. */
function placed(text: string, at: number, what: string): JsonFault {
  const start = text.lastIndexOf('\n', at - 1) + 1;
  const newline = text.indexOf('\n', at);
  const end = newline < 0 ? text.length : newline;
  const from = Math.max(start, at - before);
  const to = Math.min(end, at + after);
  const cutBefore = from > start ? '…' : '';
  const plain = text.slice(from, to).replace(/\p{C}/gu, ' ');
  return {
    line: text.slice(0, start).split('\n').length,
    column: at - start + 1,
    excerpt: `${cutBefore}${plain}${to < end ? '…' : ''}`,
    caret: `${' '.repeat(cutBefore.length + at - from)}^`,
    what,
  };
}
