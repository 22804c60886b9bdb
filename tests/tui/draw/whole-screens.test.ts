/** Whole screens as they stand on a terminal of 80 x 24, row by row. */
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../../src/show/colour.js';
import { createScreen } from '../../../src/tui/terminal/screen.js';
import { headerRow } from '../../../src/tui/draw/chrome.js';
import { FakeTerminal } from '../terminal/fake-terminal.js';
import { drawnRows } from './drawn-frame.js';
import { afterKeys, drawnState } from './drawn-state.js';

const SIZE = { columns: 80, rows: 24 };

describe('a whole screen', () => {
  it('ranks profiles', async () => {
    expect(await drawnRows(drawnState({ size: SIZE }))).toEqual([
      'underfoot  pebble under kim, all 4 scenarios         ranked; odex checked 0 of 5',
      '    # ▴  profile    each scenario  falls  score     overshoot  settling    cut',
      '▸     1  plain-one  ●●●●             0/4   0.11  ·        2 %     0.3 s  0.0 %',
      '      2  quick-one  ●●●●             0/4   0.18  ·        6 %     0.5 s  1.0 %',
      '      3  slow-one   ●◐●●             0/4   0.58  ·       10 %   > 2.6 s  2.0 %',
      '      4  shaky-one  ●●●✗             1/4   6.37  ·       13 %     1.0 s  3.0 %',
      '      5  weak-one   ✗●●●             1/4   6.40  ·       18 %     1.3 s  4.0 %',
      '',
      'plain-one is 1st of 5, the one to     Pitch peaks nose down 3.3° 0.20 s after',
      'try first: upright in all 4 runs.     the kerb and stays within 0.5° of its end',
      'Weakest in wet-leaves: 50.0 %                             kerb',
      'headroom left.                        nose down 4° ┤      ┊',
      'Made for tests of what is drawn.                   │      ┊ ⡼⠙⣆',
      '● composed, ◐ marginal, ✗ failed.     nose down 2° ┤      ┊⢰⠃ ⠸⡄',
      '                                                   │      ┊⡼   ⢳',
      '● kerb        50.0 % headroom left                 │      ⠠⡇⠤ ⠤⠘⡆ ⠤ ⠤ ⢀⡴⠒⠶⣄⡀⠤ ⠤',
      '● level       50.0 % headroom left           level ┤⠛⠛⠛⠛⠛⠛⠛⠁⣂⠂⣂⠂⢹⡀⣂⠂⣂⣰⠋⠂⣂⠂⠈⠙⠲⠤⠤⠴',
      '● long-hill   50.0 % headroom left                 │      ┊      ⢳⡀⢀⡼⠁',
      '● wet-leaves  50.0 % headroom left      nose up 2° ┤      ┊       ⠉⠉',
      '                                                   │      ┊',
      '                                        nose up 4° ┤      ┊',
      '                                                   └──────┯━━━━━ measured ━━━━━━',
      '                                                          1           2 s',
      'Enter look  Space pick  e edit  y why  g sweep  a shortlist  s sort  ? all keys',
    ]);
  });

  it('traces a run', async () => {
    expect(await drawnRows(afterKeys(drawnState({ size: SIZE }), 'return'))).toEqual([
      'Trace  plain-one in wet-leaves, pebble under kim, pack at 80 %      paused at 1×',
      '                    kerb                                       ⢀⠔⠒⢦',
      ' nose down 4° ┤     ⢀⣤                                         ⠘⢆⣇⠜',
      '              │     ⢸⠈⣇                                         ⡸⢸',
      '        level ┤⠤⠤⠤⠤⠤⠏⣖⢸⡀⠄⡴⠛⠳⣤⣠⡤⠤⠤⠤⠤⠤⠤⠤⠤⠤⠤⠤⠤⠤⠤⠤⠤                ⢀⠇⠸⡀',
      '              │     ┊│ ⠳⠞⠁                                     ⢸⢐ ⡇',
      '   nose up 4° ┤     ┊│                                         ⡇⢐ ⢱',
      '   forward 8° ┤     ┊⢀⣠⠤⠤⠤⣄⡀          ⢀⡤⠤⠤⠤⣄⡀                 ⢸ ⢐ ⢸',
      '              │⠤⠤⠤⠤⠤⠖⠋┈┈┈┈┈⠉⠳⣄⡀┈┈┈┈⢀⡤⠞⠉┈┈┈┈┈⠙⠦⣄               ⢧⠞⠉⠙⢦⡇',
      '      back 8° ┤     ┊│        ⠉⠓⠒⠒⠚⠉          ⠈  ⣀⣀⣀⣀⡀tail ⠉⠉⠉⠹⣍⠙⢲⡾⠒⠒⠒⠂ nose',
      '         80 A ┤⠁⠁⠁⠁⠁⢠⣤⡀⠁⠁⠁⠃⠃⠁⠁⠁⠁⠁⠁⠁⠁⠁⠁⠁⠁⠁⠁⠁⠁⠁⠁⠁      ⠈⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉',
      '              │⣤⣤⣤⣤⣤⡾│⢳⡀⢀⣤⠶⣤⣄⣀⣠⣤⣤⣤⣤⣤⣤⣤⣤⣤⣤⣤⣤⣤⣤⣤⣤  ├─────┤ 0.5 m         forward →',
      '              │┈┈┈┈┈┊│┈⠛⠛⠁┈┈┈⠉┈┈┈┈┈┈┈┈┈┈┈┈┈┈┈┈┈  time       1.21 s',
      '        -80 A ┤⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀⡀  pitch      nose down 3.2°',
      '       cut by │      v                           lean       forward 2.3°',
      '      20 km/h ┤⣀⣀⣀⣀⣀⣀⡤⠤⠤⠤⠤⠤⠤⠤⠤⠤⣄⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀  speed      15.5 km/h',
      '              │     ┊│                           current    50.6 A',
      '       0 km/h ┤     ┊│                           request    57.6 A',
      '     road 0 m ┤⠉⠉⠉⠉⠉⡇│                           cut by     voltage to 50.6 A',
      ' road -0.05 m ┤     ⣇⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀  headroom   50.0 %',
      '              └┬────━▲━━━┯━━ measured ━━━━━━━━┯  event      kerb 0.21 s ago',
      '               0         2          4       6 s  set-point  nose up 0.2°',
      'cut by: v voltage | ⠄⠄⠄ set-point, ceilings      road       -0.05 m, level',
      'Space play  PgDn profile  z zoom in  n next event  p peak  Esc back  ? all keys',
    ]);
  });

  it('says a comparison in words, in ASCII alone', async () => {
    const state = drawnState({ size: SIZE, options: { symbols: 'ascii' } });
    expect(await drawnRows(afterKeys(state, 'space', 'space', 'c', 't'))).toEqual([
      'Compare  plain-one, quick-one in level, pebble under kim, pack a..  paused at 1x',
      'A plain-one and B quick-one come out equal over all, at the same cost: 0.32.',
      'They never part: from where each begins, their pitches stay within 0.5 deg of',
      'one another.',
      '',
      'A plain-one  + upright to the end at 6.00 s',
      'B quick-one  + upright to the end at 6.00 s',
      '',
      'At 1.21 s:',
      'A plain-one  1.21 s  nose down 3.2 deg     50.6 A  15.5 km/h',
      'B quick-one  1.21 s  nose down 3.2 deg     50.6 A  15.5 km/h',
      '',
      '* better           A plain-one   B quick-one   difference',
      'outcome                upright       upright        equal',
      'cost                      0.32          0.32        equal',
      'rebound                 31.0 %        31.0 %        equal',
      'settling time           1.90 s        1.90 s        equal',
      'ticks cut                0.0 %         0.0 %        equal',
      'longest cut               0 ms          0 ms        equal',
      'nose down at most      0.0 deg       0.0 deg        equal',
      'nose up at most        0.0 deg       0.0 deg        equal',
      'least headroom         100.0 %       100.0 %        equal',
      '7 more rows that matter less',
      'Space play  z zoom in  n next event  p peak  c first cut  Esc back  ? all keys',
    ]);
  });
});

it('turns the whole line at the top round, from the first column to the last', async () => {
  const state = drawnState({ size: SIZE, options: { paint: createPaint('truecolor') } });
  const terminal = new FakeTerminal(SIZE.columns, SIZE.rows);
  const screen = createScreen(terminal);
  screen.paint(0, [headerRow(state), 'plain']);
  await terminal.settled();
  screen.close();
  const [first, second] = terminal.cells();
  const isInverse = ({ look }: { look: string }) => Number.parseInt(look, 10) !== 0;
  expect(first!.map(isInverse)).toEqual(new Array(80).fill(true));
  expect(second!.some(isInverse)).toBe(false);
});
