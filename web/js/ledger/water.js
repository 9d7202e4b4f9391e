// Where the water of a roof goes, as arrows of what runs from one face to one place.

/** The face or the junction that water goes to, as a key. */
export const placeKey = place => place.face ? 'face ' + place.face : 'junction ' + place.junction;

const LEAST_M2 = 0.05;
const planArea = ring => Math.abs(ring.reduce((t, p, i) => t + p[0] * ring[(i + 1) % ring.length][1]
  - ring[(i + 1) % ring.length][0] * p[1], 0)) / 2;
const centre = ring => [0, 1, 2].map(k => ring.reduce((t, p) => t + p[k], 0) / ring.length);

/**
 * One for all that goes from a face to one place: from the middle of the area to the middle of its low edge, the largest first.
 * @param {{catchments: {face: string, to: object, outline: number[][]}[]}} water
 * @returns {{areaM2: number, from: number[], to: number[]}[]}
 */
export function flows(water) {
  const heads = new Map();
  for (const c of water.catchments) {
    const k = c.face + ' ' + placeKey(c.to), a = planArea(c.outline), from = centre(c.outline), low = centre(c.outline.slice(0, 2));
    const h = heads.get(k) ?? {a: 0, from: [0, 0, 0], low: [0, 0, 0]};
    const add = (sum, p) => sum.map((x, i) => x + a * p[i]);
    heads.set(k, {a: h.a + a, from: add(h.from, from), low: add(h.low, low)});
  }
  return [...heads.values()].filter(h => h.a > LEAST_M2).sort((p, q) => q.a - p.a)
    .map(h => ({areaM2: h.a, from: h.from.map(x => x / h.a), to: h.low.map(x => x / h.a)}));
}
