// What places are called: kind, running number from west to east, and in which part of the roof they lie. Their ids stand on the sheets.

import {open, places} from './roof.js';
import {capital} from './words.js';

let known = {sheet: null, names: new Map()};

const label = place => (place.at ? open.sheet.nodeKinds : open.sheet.kinds)?.find(k => k.id === place.kind)?.label ?? place.kind;

function centre(place) {
  const ps = place.path ?? [place.at];
  return [0, 1].map(i => ps.reduce((t, p) => t + p[i], 0) / ps.length);
}

/** The names of all places of the roof that is open; found once. */
function names() {
  if (known.sheet === open.sheet) return known.names;
  const all = places().map(place => ({place, label: label(place), at: centre(place)}));
  const [west, east] = span(all.map(x => x.at[0])), [south, north] = span(all.map(x => x.at[1])), number = new Map(), found = new Map();
  const byPlace = (a, b) => Math.round(a.at[0]) - Math.round(b.at[0]) || b.at[1] - a.at[1] || (a.place.id < b.place.id ? -1 : 1);
  for (const x of all.sort(byPlace)) {
    number.set(x.label, (number.get(x.label) ?? 0) + 1);
    const part = [third(x.at[1], south, north, 'south', 'north'), third(x.at[0], west, east, 'west', 'east')].filter(Boolean).join('-');
    found.set(x.place.id, {label: x.label, number: number.get(x.label), part: part || 'middle'});
  }
  for (const n of found.values()) n.text = capital(n.label) + (number.get(n.label) > 1 ? ` ${n.number}` : '');
  known = {sheet: open.sheet, names: found};
  return found;
}

const span = list => list.reduce(([lo, hi], x) => [Math.min(lo, x), Math.max(hi, x)], [Infinity, -Infinity]);

function third(x, lo, hi, low, high) {
  const t = hi > lo ? (x - lo) / (hi - lo) : 0.5;
  return t < 1 / 3 ? low : t > 2 / 3 ? high : '';
}

/** As "Ridge 2"; a face and what is not of this roof by its id. */
export const nameOf = id => names().get(id)?.text ?? (/^F\d/.test(id) ? `Face ${id}` : id);

/** As "north-west". */
export const partOf = id => names().get(id)?.part ?? '';
