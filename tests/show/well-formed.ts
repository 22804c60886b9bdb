/** A strict reading of the small part of XML that our pictures use; throws at the first fault. */

/** An element as it was read. */
export interface ReadElement {
  name: string;
  attributes: Record<string, string>;
  text: string;
}

const TOKEN = /<(\/?)([a-zA-Z]+)((?:\s+[a-zA-Z-:]+="[^"<]*")*)\s*(\/?)>|([^<]+)/y;
const ATTRIBUTE = /([a-zA-Z-:]+)="([^"<]*)"/g;

function unescaped(text: string): string {
  return text.replace(/&([^;&\s]*);?/g, (whole: string, name: string) => {
    const known: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };
    const character = known[name];
    if (character === undefined || !whole.endsWith(';')) throw new Error(`a loose ampersand: ${whole}`);
    return character;
  });
}

function readAttributes(source: string): Record<string, string> {
  const attributes: Record<string, string> = {};
  for (const [, name = '', value = ''] of source.matchAll(ATTRIBUTE)) {
    if (name in attributes) throw new Error(`attribute ${name} twice`);
    attributes[name] = unescaped(value);
  }
  return attributes;
}

/** Every element of a document, in order of opening; `text` is the text directly inside it. */
export function readXml(source: string): ReadElement[] {
  const forbidden = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/u;
  if (forbidden.test(source)) throw new Error('a character that XML 1.0 does not allow');
  const found: ReadElement[] = [];
  const open: ReadElement[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < source.length) {
    const at = TOKEN.lastIndex;
    const match = TOKEN.exec(source);
    if (match === null) throw new Error(`not well-formed at ${at}: ${source.slice(at, at + 60)}`);
    const [, closing, name = '', attributes = '', empty, text] = match;
    const inner = open.at(-1);
    if (text !== undefined) {
      if (inner === undefined && text.trim() !== '') throw new Error(`text outside the root: ${text}`);
      if (inner !== undefined) inner.text += unescaped(text);
    } else if (closing === '/') {
      if (open.pop()?.name !== name) throw new Error(`</${name}> closes nothing`);
    } else {
      if (inner === undefined && found.length > 0) throw new Error('a second root');
      const element = { name, attributes: readAttributes(attributes), text: '' };
      found.push(element);
      if (empty === '') open.push(element);
    }
  }
  if (open.length > 0) throw new Error(`<${open.at(-1)?.name}> is never closed`);
  return found;
}
