/** Markup that is safe to put into a page as it is: made by this file's functions alone. */
export interface Markup {
  readonly html: string;
}

/** Anything that can stand in markup: text is escaped, markup is not, nothing is nothing. */
export type Content = string | number | Markup | null | false | readonly Content[];

const escapes: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Marks that turn the direction of what follows: a name with one would turn the page's own words round. */
const directionMarks = /[\u202a-\u202e\u2066-\u2069\u200e\u200f\u061c]/g;

/** A text as it stands in markup, between tags or within quotes. */
export const escaped = (text: string): string =>
  text.replace(directionMarks, '').replace(/[&<>"']/g, (sign) => escapes[sign]);

/** All of a content as one string of markup. */
export function htmlOf(content: Content): string {
  if (content === null || content === false) return '';
  if (typeof content === 'string') return escaped(content);
  if (typeof content === 'number') return String(content);
  if ('html' in content) return content.html;
  return content.map(htmlOf).join('');
}

/** Elements that have no end tag in HTML and nothing in them. */
const empty: readonly string[] = ['meta', 'br'];

export type Attributes = Readonly<Record<string, string | number | null>>;

/** An element with its attributes, null ones left out, and what is in it. */
export function element(name: string, attributes: Attributes = {}, ...content: Content[]): Markup {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== null)
    .map(([key, value]) => ` ${key}="${escaped(String(value))}"`)
    .join('');
  return {
    html: empty.includes(name) ? `<${name}${written}>` : `<${name}${written}>${htmlOf(content)}</${name}>`,
  };
}
