/**
 * How does a ranking become a file? Its format by the ending of the file's name, its rows in the order that they had
 * on the screen.
 */
import { extname } from 'node:path';
import type { Checked, Problem } from '../quantity/problem.js';
import { quoted } from '../quantity/received.js';
import { checkLine } from '../show/check-line.js';
import { createPaint } from '../show/colour.js';
import { rankCsv } from '../show/rank-csv.js';
import { rankLines } from '../show/rank-table.js';
import { fileProblem } from '../store/system-fault.js';
import { writeNewFile, type Force } from '../store/write-new-file.js';
import { rankReport, rankView, type RankResult } from './rank-report.js';

/** Columns of a table in a text file. */
const TABLE_WIDTH = 120;

const TEXT_OF: Readonly<Record<string, (result: RankResult) => string>> = {
  '.csv': (result) => rankCsv({ ...rankView(result), order: result.order }),
  '.json': (result) => `${JSON.stringify(rankReport(result), null, 2)}\n`,
  '.txt': tableText,
};

function tableText(result: RankResult): string {
  const options = { width: TABLE_WIDTH, ascii: false, paint: createPaint('none') };
  const check = result.check ?? (result.plan.solver === 'reference' ? null : 'missing');
  return `${[...rankLines(rankView(result), options), '', ...checkLine(check, options)].join('\n')}\n`;
}

/**
 * Writes the ranking to a new file: .csv, .json or .txt (the table). An existing file is replaced only by force.
 * Answers the path written, or the problem; nothing is half written.
 */
export async function saveRank(
  path: string,
  result: RankResult,
  { force }: { force: Force },
): Promise<Checked<string, Problem>> {
  const ending = extname(path);
  const text = TEXT_OF[ending.toLowerCase()];
  if (text === undefined) {
    const received = ending === '' ? 'a name without ending' : `the ending ${quoted(ending)}`;
    return {
      ok: false,
      faults: [fileProblem(path, 'a file name that ends in .csv, .json or .txt', received)],
    };
  }
  return writeNewFile(path, text(result), { force });
}
