// Lines and outlines as SVG path data; north is up.

/** To the tenth of a millimetre; rounding is several times as quick as toFixed. */
const rounded = x => Math.round(x * 1e4) / 1e4;
const point = p => `${rounded(p[0])} ${rounded(-p[1])}`;

/** An open line. */
export const trace = path => 'M' + path.map(point).join('L');

/** The rings of a face. */
export const outline = f => f.facets.map(rings => rings.map(r => 'M' + r.map(point).join('L') + 'Z').join('')).join('');

const NOWHERE = [Infinity, Infinity, -Infinity, -Infinity];
const around = ([west, south, east, north], p) =>
  [Math.min(west, p[0]), Math.min(south, p[1]), Math.max(east, p[0]), Math.max(north, p[1])];

/** Whether any of a face may lie in the part of the plan that shows. */
export function mayShow(f, [west, south, east, north]) {
  const b = f.planBox ??= f.facets.flat(2).reduce(around, NOWHERE);
  return b[0] < east && b[2] > west && b[1] < north && b[3] > south;
}
