// What places are called where people talk of them: kind, running number from west to east, and in which part of the roof they lie.

/**
 * @param {{id: string, path?: number[][], at?: number[]}[]} places lines by their path, nodes by where they are
 * @param {(place: object) => string} labelOf the word for its kind
 * @returns {Map<string, {text: string, part: string}>} by id, as "Ridge 2" and "north-west"
 */
export function placeNames(places, labelOf) {
  const all = places.map(place => ({id: place.id, label: labelOf(place), at: centre(place)})), count = new Map(), names = new Map();
  const [west, east] = span(all.map(x => x.at[0])), [south, north] = span(all.map(x => x.at[1]));
  for (const x of all.sort((a, b) => Math.round(a.at[0]) - Math.round(b.at[0]) || b.at[1] - a.at[1] || (a.id < b.id ? -1 : 1))) {
    const number = (count.get(x.label) ?? 0) + 1, part = [third(x.at[1], south, north, 'south', 'north'),
      third(x.at[0], west, east, 'west', 'east')].filter(Boolean).join('-');
    count.set(x.label, number);
    names.set(x.id, {label: x.label, number, part: part || 'middle'});
  }
  for (const n of names.values()) {
    n.text = n.label.charAt(0).toUpperCase() + n.label.slice(1) + (count.get(n.label) > 1 ? ` ${n.number}` : '');
  }
  return names;
}

function centre(place) {
  const ps = place.path ?? [place.at];
  return [0, 1].map(i => ps.reduce((t, p) => t + p[i], 0) / ps.length);
}

const span = list => list.reduce(([lo, hi], x) => [Math.min(lo, x), Math.max(hi, x)], [Infinity, -Infinity]);

function third(x, lo, hi, low, high) {
  const t = hi > lo ? (x - lo) / (hi - lo) : 0.5;
  return t < 1 / 3 ? low : t > 2 / 3 ? high : '';
}
