// A result, indexed for looking at: what each junction takes, who refers to whom, where everything lies.

import {hasModelled} from './coverage.js';
import {sealClass, takeKinds, KINDS, SEALS, REVIEW} from './marks.js';

const sum = (list, f) => (list ?? []).reduce((t, x) => t + (f(x) ?? 0), 0);
const ofForm = (j, form) => sum((j.seals ?? []).filter(x => x.form === form), x => x.lengthM);

export function index(raw) {
  takeKinds(raw.kinds);
  const faces = new Map((raw.roofFaces ?? []).map(f => [f.id, face(f)]));
  const findings = (raw.findings ?? []).map((f, place) => ({...f, place}));
  const findingsOf = new Map();
  for (const f of findings) if (f.junction) findingsOf.set(f.junction, [...findingsOf.get(f.junction) ?? [], f]);
  const junctions = (raw.junctions ?? []).map((j, place) => junction(j, place, faces, findingsOf));
  return {
    raw, faces, findings, junctions,
    whole: new Map(),   // junctions as the result has them, fetched when one is looked at
    byId: new Map(junctions.map(j => [j.id, j])),
    details: new Map((raw.details ?? []).map(d => [d.id, d])),
    choices: new Map((raw.detailChoices ?? raw.details ?? []).map(d => [d.id, d.title])),
    elements: new Map((raw.elements ?? []).map(e => [e.globalId, e])),
    box: box(faces, junctions),
    totalM: sum(junctions, j => j.lengthM),
    coverageM: measure(raw.system?.panel?.coverage ?? raw.system?.panelCoverage) ?? 0.4064,
    seamM: measure(raw.system?.panel?.seamHeight ?? raw.system?.seamHeight) ?? 0.0381,
  };
}

function junction(j, place, faces, findingsOf) {
  const slopes = j.faces.map(id => faces.get(id)?.slopeDegrees).filter(Number.isFinite);
  return {
    ...j, place,
    seal: sealClass(j),
    slope: slopes.length ? Math.min(...slopes) : NaN,
    tapeM: ofForm(j, 'tape'), beadM: ofForm(j, 'bead'), inSeamM: ofForm(j, 'in-seam'),
    screws: j.fasteners,
    found: findingsOf.get(j.id) ?? [],
  };
}

/** A face with its outlines: facets, each a list of rings, outsides counter-clockwise seen from above, holes clockwise. */
function face(f) {
  return {...f, facets: (f.facets ?? []).map(rings => rings.map(r => r.map(p => [p[0], p[1], p[2]])))};
}

function box(faces, junctions) {
  const lo = [Infinity, Infinity, Infinity], hi = [-Infinity, -Infinity, -Infinity];
  const take = p => { for (let i = 0; i < 3; i++) { lo[i] = Math.min(lo[i], p[i]); hi[i] = Math.max(hi[i], p[i]); } };
  for (const f of faces.values()) for (const rings of f.facets) for (const r of rings) r.forEach(take);
  for (const j of junctions) j.path.forEach(take);
  return lo[0] === Infinity ? {lo: [0, 0, 0], hi: [1, 1, 1]} : {lo, hi};
}

/** File of the model that an element is in, where there are several models. */
export const modelOf = (ledger, element) => element && (ledger.raw.models ?? []).length > 1 ? ledger.raw.models[element.model]?.file ?? '' : '';

const UNIT = {mm: 0.001, cm: 0.01, m: 1, in: 0.0254, ft: 0.3048};

/** Metres from {"value": 16, "unit": "in"}, "16 in", "1 1/2 in" or a bare number of metres. */
export function measure(v) {
  if (v === undefined || v === null) return undefined;
  if (typeof v === 'number') return v;
  const text = typeof v === 'object' ? `${v.value} ${v.unit}` : v;
  const m = /^\s*(?:(\d+(?:\.\d+)?)\s*)?(?:(\d+)\/(\d+)\s*)?(mm|cm|m|in|ft)\s*$/.exec(text);
  return m && (m[1] || m[2]) ? (Number(m[1] ?? 0) + (m[2] ? m[2] / m[3] : 0)) * UNIT[m[4]] : undefined;
}

/** Lines that a comparison is about, by what happened to them. */
export const changedPaths = c => ({gone: c.removed.map(l => l.path), changed: c.changed.map(p => p.after.path), added: c.added.map(l => l.path)});

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

/** A place well inside a face, for its label: the middle of the widest level stretch. */
export function labelPlace(f) {
  let best = null;
  for (const rings of f.facets) {
    const ys = rings[0].map(p => p[1]);
    const y0 = Math.min(...ys), y1 = Math.max(...ys);
    for (const k of [0.5, 0.35, 0.65, 0.2, 0.8]) {
      const y = y0 + (y1 - y0) * k;
      const xs = crossings(rings, y);
      for (let i = 0; i + 1 < xs.length; i += 2) {
        const w = (xs[i + 1].x - xs[i].x) * (1 - 0.4 * Math.abs(k - 0.5));
        if (!best || w > best.w) best = {w, at: [(xs[i].x + xs[i + 1].x) / 2, y, (xs[i].z + xs[i + 1].z) / 2]};
      }
    }
  }
  return best?.at;
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

// ---- rows of the table -------------------------------------------------------------------------------------------------------

const by = f => (a, b) => { const x = f(a), y = f(b); return x < y ? -1 : x > y ? 1 : 0; };
const order = reviews => ({
  place: by(j => j.place), kind: by(j => kindOf(j, reviews)), length: by(j => j.lengthM), slope: by(j => j.slope || 0),
  faces: (a, b) => a.faces.join(' ').localeCompare(b.faces.join(' '), 'en', {numeric: true}),
  seal: by(j => j.seal), detail: by(j => detailOf(j, reviews)), tape: by(j => j.tapeM), bead: by(j => j.beadM), inseam: by(j => j.inSeamM),
  screws: by(j => j.screws), modelled: by(j => j.modelledM ?? 0), findings: by(j => j.found.length), review: by(j => reviews.get(j.id)?.state ?? 'open'),
});

/** Kind and detail in force: the rules', or what a person chose. */
export const kindOf = j => j.kind;
export const detailOf = j => j.detail || '';
export const reviewOf = (j, reviews) => reviews.get(j.id)?.state ?? 'open';

export function matching(ledger, filters, reviews) {
  const {kind, detail, seal, finding, face: faceId, element, review, hand, modelled, text} = filters;
  const needle = text?.toLowerCase();
  return ledger.junctions.filter(j =>
    (!kind || kindOf(j, reviews) === kind) && (!detail || detailOf(j, reviews) === detail) && (!seal || j.seal === seal)
    && (!finding || (finding === 'any' ? j.found.length : j.found.some(f => f.code === finding)))
    && (!faceId || j.faces.includes(faceId)) && (!element || j.elements.includes(element) || j.modelled?.some(p => p.element === element))
    && (!review || reviewOf(j, reviews) === review) && (!hand || (hand === 'stale' ? reviews.get(j.id)?.stale : j.decided))
    && (!modelled || hasModelled(j, modelled))
    && (!needle || haystack(j, ledger, reviews).includes(needle)));
}

function haystack(j, ledger, reviews) {
  const names = j.elements.map(e => `${e} ${ledger.elements.get(e)?.name ?? ''}`).join(' ');
  return `${j.id} ${kindOf(j, reviews)} ${detailOf(j, reviews)} ${j.faces.join(' ')} ${names} ${j.found.map(f => f.code).join(' ')} ${reviews.get(j.id)?.note ?? ''}`.toLowerCase();
}

const GROUP = {
  kind: (j, r) => kindOf(j, r), detail: (j, r) => detailOf(j, r) || '–', seal: j => j.seal, face: j => j.faces[0] ?? '–', review: (j, r) => reviewOf(j, r),
};

/** The rows to show: filtered, sorted, grouped with subtotals; folded groups keep their heading only. */
export function rows(ledger, {filters, sort, group, closed, reviews}) {
  const list = matching(ledger, filters, reviews);
  const down = sort.startsWith('-');
  const compare = order(reviews)[down ? sort.slice(1) : sort] ?? order(reviews).place;
  // What is equal stays in the order of the result, up or down.
  list.sort((a, b) => (down ? compare(b, a) : compare(a, b)) || a.place - b.place);
  const key = GROUP[group];
  if (!key) return {list, rows: list.map(j => ({j})), totals: totals(list)};
  const groups = new Map();
  for (const j of list) {
    const k = key(j, reviews);
    if (!groups.has(k)) groups.set(k, []);
    groups.get(k).push(j);
  }
  const out = [];
  for (const [k, members] of [...groups].sort(([a], [b]) => rank(group, a) - rank(group, b) || a.localeCompare(b, 'en', {numeric: true}))) {
    out.push({group: k, totals: totals(members), closed: closed.has(k)});
    if (!closed.has(k)) members.forEach(j => out.push({j}));
  }
  return {list, rows: out, totals: totals(list)};
}

/** Groups stand in the order in which the trade names them, not in the alphabet's. */
function rank(group, key) {
  const known = {kind: KINDS, seal: SEALS, review: REVIEW}[group];
  return known ? Object.keys(known).indexOf(key) : 0;
}

export function totals(list) {
  const t = {count: list.length, lengthM: 0, tapeM: 0, beadM: 0, inSeamM: 0, screws: 0, findings: 0, modelledM: 0};
  for (const j of list) {
    t.lengthM += j.lengthM; t.tapeM += j.tapeM; t.beadM += j.beadM; t.inSeamM += j.inSeamM; t.screws += j.screws; t.findings += j.found.length; t.modelledM += j.modelledM ?? 0;
  }
  return t;
}
