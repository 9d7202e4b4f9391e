// Places and distances in plan, on plain points.

/** Whether a place lies in rings, by the even-odd rule. */
export function inside(rings, x, y) {
  let odd = false;
  for (const r of rings) {
    for (let i = 0, k = r.length - 1; i < r.length; k = i++) {
      if ((r[i][1] > y) === (r[k][1] > y)) continue;
      if (x < (r[k][0] - r[i][0]) * (y - r[i][1]) / (r[k][1] - r[i][1]) + r[i][0]) odd = !odd;
    }
  }
  return odd;
}

/** Distance in plan from a place to the straight stretch from a to b. */
export function toSegment(x, y, a, b) {
  const dx = b[0] - a[0], dy = b[1] - a[1], n = dx * dx + dy * dy;
  const t = n ? Math.max(0, Math.min(1, ((x - a[0]) * dx + (y - a[1]) * dy) / n)) : 0;
  return Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy);
}

/**
 * The place half way along a junction.
 * @param {import('../types.js').Junction} j
 * @returns {import('../types.js').Point}
 */
export function middle(j) {
  const p = j.path;
  let half = j.lengthM / 2;
  for (let i = 1; i < p.length; i++) {
    const d = Math.hypot(p[i][0] - p[i - 1][0], p[i][1] - p[i - 1][1], p[i][2] - p[i - 1][2]);
    if (half <= d && d > 0) return p[i].map((x, k) => p[i - 1][k] + (x - p[i - 1][k]) * half / d);
    half -= d;
  }
  return p[Math.floor(p.length / 2)];
}

const MOST_PLACES = 8;

/** Places well inside a face, for its label, the best first: the middles of its widest level stretches. Found once. */
export const labelPlaces = f => f.labelsAt ??= stretches(f).sort((a, b) => b.w - a.w).slice(0, MOST_PLACES).map(x => x.at);
export const labelPlace = f => labelPlaces(f)[0];

function stretches(f) {
  const all = [];
  for (const rings of f.facets) {
    const ys = rings[0].map(p => p[1]);
    const y0 = Math.min(...ys), y1 = Math.max(...ys);
    for (const k of [0.5, 0.35, 0.65, 0.2, 0.8]) {
      const y = y0 + (y1 - y0) * k;
      const xs = crossings(rings, y);
      for (let i = 0; i + 1 < xs.length; i += 2) {
        const w = (xs[i + 1].x - xs[i].x) * (1 - 0.4 * Math.abs(k - 0.5));
        all.push({w, at: [(xs[i].x + xs[i + 1].x) / 2, y, (xs[i].z + xs[i + 1].z) / 2]});
      }
    }
  }
  return all;
}

function crossings(rings, y) {
  const xs = [];
  for (const r of rings) {
    for (let i = 0; i < r.length; i++) {
      const a = r[i], b = r[(i + 1) % r.length];
      if ((a[1] <= y) !== (b[1] <= y)) {
        const t = (y - a[1]) / (b[1] - a[1]);
        xs.push({x: a[0] + t * (b[0] - a[0]), z: a[2] + t * (b[2] - a[2])});
      }
    }
  }
  return xs.sort((p, q) => p.x - q.x);
}

/** The smallest box, level and square to the axes, round all faces and junctions. */
export function box(faces, junctions) {
  const lo = [Infinity, Infinity, Infinity], hi = [-Infinity, -Infinity, -Infinity];
  const take = p => {
    for (let i = 0; i < 3; i++) {
      lo[i] = Math.min(lo[i], p[i]);
      hi[i] = Math.max(hi[i], p[i]);
    }
  };
  for (const f of faces.values()) for (const rings of f.facets) for (const r of rings) r.forEach(take);
  for (const j of junctions) j.path.forEach(take);
  return lo[0] === Infinity ? {lo: [0, 0, 0], hi: [1, 1, 1]} : {lo, hi};
}
