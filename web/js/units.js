// Numbers to read. Results hold metres, square metres, millilitres, degrees; the switch only changes how they are shown.

import {state} from './state.js';

const FT = 0.3048, IN = 0.0254, FLOZ_ML = 29.5735295625;
const us = () => state.units === 'us';
const formats = [0, 1, 2, 3].map(n => new Intl.NumberFormat('en-US', {minimumFractionDigits: n, maximumFractionDigits: n}));
export const fixed = (x, n) => formats[n].format(x);

/** A length, to the millimetre or the eighth of an inch. */
export function length(m) {
  if (!Number.isFinite(m)) return '–';
  return us() ? feet(m) : fixed(m, 3) + ' m';
}

/** A sum of lengths, as ordered. */
export function run(m) {
  if (!Number.isFinite(m)) return '–';
  return us() ? fixed(m / FT, 1) + ' ft' : fixed(m, 2) + ' m';
}

function feet(m) {
  const eighths = Math.round(Math.abs(m) / IN * 8);
  const ft = Math.floor(eighths / 96), rest = eighths % 96, inch = Math.floor(rest / 8), e = rest % 8;
  const part = e === 0 ? '' : e % 4 === 0 ? ' 1/2' : e % 2 === 0 ? ` ${e / 2}/4` : ` ${e}/8`;
  return `${m < 0 ? '−' : ''}${ft}′ ${inch}${part}″`;
}

/** Something small: a width, a spacing, a diameter. */
export function small(m) {
  if (!Number.isFinite(m)) return '–';
  return us() ? fixed(m / IN, 2).replace(/\.?0+$/, '') + ' in' : fixed(m * 1000, 1).replace(/\.0$/, '') + ' mm';
}

export function area(m2) {
  return !Number.isFinite(m2) ? '–' : us() ? fixed(m2 / FT / FT, 1) + ' ft²' : fixed(m2, 2) + ' m²';
}

export function volume(ml) {
  return !Number.isFinite(ml) ? '–' : us() ? fixed(ml / FLOZ_ML, 1) + ' fl oz' : fixed(ml, 0) + ' ml';
}

export function slope(degrees) {
  if (!Number.isFinite(degrees)) return '–';
  return us() ? fixed(12 * Math.tan(degrees * Math.PI / 180), 2).replace(/\.?0+$/, '') + ':12' : fixed(degrees, 1) + '°';
}

export const degrees = d => Number.isFinite(d) ? fixed(d, 1) + '°' : '–';
export const count = n => Number.isFinite(n) ? fixed(n, 0) : '–';
export const percent = x => Number.isFinite(x) ? fixed(100 * x, 0) + ' %' : '–';
export const bytes = b => b >= 1e6 ? fixed(b / 1e6, 1) + ' MB' : fixed(Math.max(b / 1e3, b ? 0.1 : 0), b >= 1e4 ? 0 : 1) + ' kB';

/** A number by the unit that its name ends in, the way results name them. */
export function byName(name, value) {
  if (typeof value !== 'number') return String(value);
  if (/Degrees$/.test(name)) return degrees(value);
  if (/(spacing|upstand|width|depth|diameter|gap|girth)\w*M$/i.test(name)) return small(value);
  if (/M2$/.test(name)) return area(value);
  if (/Ml$/.test(name)) return volume(value);
  if (/M$/.test(name)) return run(value);
  return Number.isInteger(value) ? count(value) : fixed(value, 2);
}

/** A name of the result as words: "fallAzimuthDegrees" becomes "fall azimuth". */
export function words(name) {
  const bare = name.replace(/(Degrees|M2|Ml|M)$/, '');
  const named = us() ? bare.replace('upstand', 'upturn').replace('Upstand', 'Upturn') : bare;
  const spaced = named.replace(/([a-z0-9])([A-Z])/g, '$1 $2').toLowerCase().replace(/[-_.]/g, ' ').trim();
  return capital(spaced);
}

/** Words as the beginning of a sentence; what a file is called stays as it is. */
export const capital = text => /^\S*[^\s\d]\.[a-z]/i.test(text) ? text : text.charAt(0).toUpperCase() + text.slice(1);

const UNIT = {mm: 0.001, cm: 0.01, m: 1, in: 0.0254, ft: 0.3048};

/** Metres from {"value": 16, "unit": "in"}, "16 in", "1 1/2 in" or a bare number of metres. */
export function metres(v) {
  if (v === undefined || v === null) return undefined;
  if (typeof v === 'number') return v;
  const text = typeof v === 'object' ? `${v.value} ${v.unit}` : v;
  const m = /^\s*(?:(\d+(?:\.\d+)?)\s*)?(?:(\d+)\/(\d+)\s*)?(mm|cm|m|in|ft)\s*$/.exec(text);
  return m && (m[1] || m[2]) ? (Number(m[1] ?? 0) + (m[2] ? m[2] / m[3] : 0)) * UNIT[m[4]] : undefined;
}
