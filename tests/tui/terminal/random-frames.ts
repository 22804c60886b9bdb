/** Frames, painted rows and sizes by chance, the same for the same seed. */
import { mersenne } from 'pure-rand/generator/mersenne';

interface Size {
  columns: number;
  rows: number;
}

/** What happens to a screen next. */
export interface ScreenAct {
  size?: Size;
  frame?: string[];
  painted?: { top: number; lines: string[] };
}

const ESC = '\u001b';
const GLYPHS = [
  ' ',
  '  ',
  '    ',
  'a',
  'word',
  '7',
  '─',
  '⣿',
  '⡀⢸',
  '°',
  'é',
  'e\u0301',
  'o\u0308\u0323',
  '世',
  '界',
  'ｗ',
];
const CODES = [
  '',
  '0',
  '1',
  '2',
  '22',
  '3',
  '4',
  '24',
  '7',
  '27',
  '31',
  '39',
  '38;5;74',
  '38;2;0;158;115',
  '44',
  '49',
  '1;35',
];

/** Acts by chance: mostly changes of a few rows, now and then a whole new frame or another size. */
export function randomActs(seed: number): (size: Size) => ScreenAct {
  const generator = mersenne(seed);
  const below = (limit: number) => (generator.next() >>> 0) % limit;
  const oneOf = (choices: readonly string[]) => choices[below(choices.length)]!;
  const piece = () => (below(5) === 0 ? `${ESC}[${oneOf(CODES)}m` : oneOf(GLYPHS));
  const line = (columns: number) => Array.from({ length: below(columns) }, piece).join('');
  const lines = (count: number, columns: number) => Array.from({ length: count }, () => line(columns));
  let frame: string[] = [];

  return (size) => {
    const act: ScreenAct = {};
    if (below(12) === 0) act.size = { columns: 1 + below(50), rows: 1 + below(20) };
    const { columns, rows } = act.size ?? size;
    if (below(4) === 0) act.painted = { top: below(rows), lines: lines(below(6), columns) };
    if (act.painted === undefined || below(2) === 0) {
      const isNew = below(8) === 0 || frame.length === 0;
      frame = isNew
        ? lines(1 + below(rows + 3), columns)
        : frame.map((old) => (below(4) === 0 ? line(columns) : old));
      act.frame = frame;
    }
    return act;
  };
}
