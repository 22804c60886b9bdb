/**
 * How is a QR code drawn to be printed? As one path of dark squares on a white ground with the quiet zone, a module so many
 * millimetres wide: the file is as large on paper as it says.
 */
import { withQuietZone, type QrMatrix } from './qr-matrix.js';
import { svgText } from './svg-text.js';

/** Width of a module on paper, mm: 33 mm for the code of most profiles (ours). */
const MODULE_MM = 0.9;

/** One rectangle a run of dark modules in a row, in modules. */
function pathOf(zone: QrMatrix): string {
  return zone
    .flatMap((row, y) =>
      row.flatMap((isDark, x) => {
        if (!isDark || row[x - 1]) return [];
        const end = row.indexOf(false, x);
        const width = (end < 0 ? row.length : end) - x;
        return [`M${x} ${y}h${width}v1h-${width}z`];
      }),
    )
    .join('');
}

/** The code as one path of its dark modules, in modules; `size` is a side with the quiet zone around it. */
export function qrPath(matrix: QrMatrix): { size: number; path: string } {
  const zone = withQuietZone(matrix);
  return { size: zone.length, path: pathOf(zone) };
}

/** The code as an SVG file; the title is what a reader of the picture is told. */
export function qrSvg(matrix: QrMatrix, title: string): string {
  const { size, path } = qrPath(matrix);
  const sizeMm = Number((size * MODULE_MM).toFixed(1));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${sizeMm}mm" height="${sizeMm}mm" viewBox="0 0 ${size} ${size}" shape-rendering="crispEdges">`,
    `<title>${svgText(title)}</title>`,
    `<rect width="${size}" height="${size}" fill="#ffffff"/>`,
    `<path d="${path}" fill="#000000"/>`,
    '</svg>',
    '',
  ].join('\n');
}
