/**
 * What document does a YAML text hold? The text is taken apart token by token so that nesting is
 * measured before anything recursive runs, and every fault of the syntax becomes a problem.
 */
import { Composer, Lexer, LineCounter, Parser, type CST, type Document, type ErrorCode } from 'yaml';
import type { Problem } from '../quantity/problem.js';

/** Most nodes that the parser may have open at once; our deepest file needs eight. */
const DEEPEST = 64;
const MOST_SYNTAX_FAULTS = 20;
const ONE_DOCUMENT = 'one YAML document';

/** Turns an offset in the text into a problem there. */
export type ProblemAt = (offset: number, expected: string, received: string) => Problem;

/** A YAML document with all that is wrong with its syntax; null when there is none to work with. */
export interface YamlDocument {
  document: Document.Parsed | null;
  problems: Problem[];
  lines: LineCounter;
}

/** Makes problems at offsets of the file shown as `file`. */
export function problemMaker(file: string, lines: LineCounter): ProblemAt {
  return (offset, expected, received) => {
    const { line, col } = lines.linePos(offset);
    return { file, line: Math.max(1, line), column: Math.max(1, col), key: '', expected, received };
  };
}

/** The tokens of the text, or the offset at which it nests too deeply. */
function tokensOf(text: string, lines: LineCounter): CST.Token[] | number {
  const parser = new Parser(lines.addNewLine);
  const tokens: CST.Token[] = [];
  lines.addNewLine(0);
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) tokens.push(token);
    if (parser.stack.length > DEEPEST) return parser.offset;
  }
  for (const token of parser.end()) tokens.push(token);
  return tokens;
}

const TOLD_OTHERWISE: readonly ErrorCode[] = ['TAG_RESOLVE_FAILED'];

function syntaxFaults(document: Document.Parsed, at: ProblemAt): Problem[] {
  return [...document.errors, ...document.warnings]
    .filter(({ code }) => !TOLD_OTHERWISE.includes(code))
    .slice(0, MOST_SYNTAX_FAULTS)
    .map(({ message, pos }) => at(pos[0], 'well-formed YAML', `a fault: ${message.trim()}`));
}

function firstTwo<T>(all: Iterable<T>): T[] {
  const found: T[] = [];
  for (const one of all) {
    found.push(one);
    if (found.length === 2) break;
  }
  return found;
}

/** The one document of a YAML text. */
export function composeYaml(text: string, file: string): YamlDocument {
  const lines = new LineCounter();
  const at = problemMaker(file, lines);
  const tokens = tokensOf(text, lines);
  if (typeof tokens === 'number') {
    const problem = at(tokens, 'sections nested a few deep', 'far deeper nesting');
    return { document: null, problems: [problem], lines };
  }
  const composer = new Composer({ uniqueKeys: false, schema: 'core', merge: false, logLevel: 'silent' });
  const [document, second] = firstTwo(composer.compose(tokens, true, text.length));
  if (document === undefined) return { document: null, problems: [at(0, ONE_DOCUMENT, 'none')], lines };
  const problems = syntaxFaults(document, at);
  if (second !== undefined) problems.push(at(second.range[0], ONE_DOCUMENT, 'a second one'));
  return { document: problems.length === 0 ? document : null, problems, lines };
}
