/**
 * Makes the pictures of the README from what the program really prints.
 */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { frameSvg } from '../../src/show/frame-svg.js';
import { programFolder } from '../../src/store/places.js';

const COLUMN_COUNT = 100;

function picture(file: string, title: string, given: string[]): void {
  const { stdout } = spawnSync(process.execPath, [join(programFolder(), 'dist/main.js'), ...given], {
    cwd: programFolder(),
    encoding: 'utf8',
    env: {
      ...process.env,
      COLUMNS: String(COLUMN_COUNT),
      NO_COLOR: '',
      FORCE_COLOR: '3',
      COLORTERM: 'truecolor',
    },
  });
  const lines = [`$ underfoot ${given.join(' ')}`, '', ...stdout.trimEnd().split('\n')];
  writeFileSync(
    join(programFolder(), '.github', file),
    frameSvg(lines, { title, columnCount: COLUMN_COUNT }),
  );
}

picture('rank.svg', 'The ranked table of the starter profiles', ['rank']);
picture('run.svg', 'One run: pitch, current under its ceilings and speed', ['run', 'linen', 'low-pack-run']);
