// Texts of the result hold numbers of both systems, of one, or of none; the switch leaves those of one.

import {state} from '../state.js';
import {fixed, length} from '../units.js';

const FT = 0.3048, IN = 0.0254, FLOZ_ML = 29.5735295625;

/** Beside a number in metric its value in US units, in parentheses. */
const IN_US = String.raw`[^()]*\d (?:in|ft|ft²|gpm|psf|mph|fl oz|°F|lb)`;
const MET = 'mm/h|mm|m²|m2|m|l/s|l/min|ml|°C|kPa|MPa|kg';
const BEFORE = String.raw`(?<![\w./-])`;
const PART = String.raw`\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?`;
/** Behind a number "in" is also a preposition; then an article or the like follows. */
const INCH = String.raw`in\b(?! (?:the|a|an|each|all|any|this|these|that|one|which|no|its|their|front)\b)`;

const partOf = text => text.split(' ').reduce((t, x) => t + (x.includes('/') ? x.split('/')[0] / x.split('/')[1] : Number(x)), 0);
const short = (x, digits) => fixed(x, digits).replace(/(\.\d*?)0+$/, '$1').replace(/\.$/, '');
const millimetres = x => short(partOf(x) * IN * 1000, 1) + ' mm';

const TO_METRIC = [
  [new RegExp(String.raw` \(${IN_US}\)`, 'g'), () => ''],
  [new RegExp(`${BEFORE}(${PART}) in/h`, 'g'), (all, x) => fixed(partOf(x) * IN * 1000, 0) + ' mm/h'],
  [/(-?\d+(?:\.\d+)?) °F/g, (all, x) => fixed((Number(x) - 32) / 1.8, 0).replace(/^-0$/, '0') + ' °C'],
  [/(\d+(?:\.\d+)?) fl oz/g, (all, x) => fixed(Number(x) * FLOZ_ML, 0) + ' ml'],
  [/(\d+(?:\.\d+)?) mph/g, (all, x) => fixed(Number(x) * 0.44704, 0) + ' m/s'],
  [new RegExp(`${BEFORE}(${PART}) ft (${PART}) in\\b`, 'g'), (all, x, y) => fixed(partOf(x) * FT + partOf(y) * IN, 3) + ' m'],
  [new RegExp(`${BEFORE}(${PART}) ft(?!²)\\b`, 'g'), (all, x) => fixed(partOf(x) * FT, 2) + ' m'],
  [new RegExp(`${BEFORE}(${PART}) (to|or|and) (${PART}) ${INCH}`, 'g'), (all, x, word, y) => `${millimetres(x)} ${word} ${millimetres(y)}`],
  [new RegExp(`${BEFORE}(${PART}) ${INCH}`, 'g'), (all, x) => millimetres(x)],
  [/(\d) m2\b/g, '$1 m²'],
];

/** What a number of a metric unit is in US units, with that unit. */
const US = {
  'mm/h': x => short(x / 25.4, 2) + ' in/h', mm: x => short(x / 25.4, 2) + ' in', m: x => length(x),
  'm²': x => fixed(x / FT / FT, 1) + ' ft²', m2: x => fixed(x / FT / FT, 1) + ' ft²', ml: x => short(x / FLOZ_ML, 1) + ' fl oz',
  'l/s': x => short(x * 15.850323, 1) + ' gpm', 'l/min': x => short(x * 0.26417205, 2) + ' gpm', '°C': x => fixed(x * 1.8 + 32, 0) + ' °F',
  kPa: x => short(x * 0.1450377, 1) + ' psi', MPa: x => fixed(x * 145.0377, 0) + ' psi', kg: x => fixed(x / 0.45359237, 0) + ' lb',
};
const TO_US = [
  [new RegExp(String.raw`${BEFORE}-?\d[\d.,]* (?:${MET}) \((${IN_US})\)`, 'g'),
    (all, known) => known.replace(/(\d+\.\d{3,}) in\b/g, (inches, x) => short(Number(x), 2) + ' in')],
  [new RegExp(String.raw`${BEFORE}(-?\d[\d,]*(?:\.\d+)?) (${MET})(?![\w/²⁻])`, 'g'),
    (all, x, unit) => US[unit](Number(x.replaceAll(',', '')))],
];

/** A text of the result with its numbers in the units that the switch says. */
export const written = text => !text ? text
  : (state.units === 'us' ? TO_US : TO_METRIC).reduce((t, [pattern, to]) => t.replace(pattern, to), text);
