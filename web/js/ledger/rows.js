// Rows of the ledger's table: filtered, sorted, grouped with subtotals.

import {hasModelled} from './coverage.js';
import {KINDS, REVIEW, SEALS, kindText} from './marks.js';
import {detailOf, kindOf, reviewOf} from './result.js';

const by = f => (a, b) => {
  const x = f(a), y = f(b);
  return x < y ? -1 : x > y ? 1 : 0;
};

const order = reviews => ({
  place: by(j => j.place), kind: by(kindOf), length: by(j => j.lengthM), slope: by(j => j.slope || 0),
  faces: (a, b) => a.faces.join(' ').localeCompare(b.faces.join(' '), 'en', {numeric: true}),
  seal: by(j => j.seal), detail: by(detailOf), tape: by(j => j.tapeM), bead: by(j => j.beadM), inseam: by(j => j.inSeamM),
  screws: by(j => j.screws), modelled: by(j => j.modelledM ?? 0), findings: by(j => j.found.length), review: by(j => reviewOf(j, reviews)),
});

/** What each filter lets through; one that is not set lets everything through. */
const PASSES = {
  kind: (j, v) => kindOf(j) === v,
  detail: (j, v) => detailOf(j) === v,
  seal: (j, v) => j.seal === v,
  finding: (j, v) => v === 'any' ? j.found.length > 0 : j.found.some(f => f.code === v),
  face: (j, v) => j.faces.includes(v),
  element: (j, v) => j.elements.includes(v) || j.modelled?.some(p => p.element === v),
  review: (j, v, {reviews}) => !j.isJoint && reviewOf(j, reviews) === v,
  override: (j, v, {reviews}) => v === 'stale' ? reviews.get(j.id)?.stale : j.decided,
  modelled: (j, v) => hasModelled(j, v),
  text: (j, v, {ledger, reviews}) => haystack(j, ledger, reviews).includes(v.toLowerCase()),
};

/**
 * Junctions and joints that pass all filters, in the order of the result.
 * @param {import('../types.js').Outline} ledger
 * @param {Record<string, string>} filters
 * @param {Map<string, import('../types.js').Review>} reviews
 */
export function matching(ledger, filters, reviews) {
  const set = Object.entries(filters).filter(([name, value]) => PASSES[name] && value);
  const context = {ledger, reviews};
  return ledger.lines.filter(j => set.every(([name, value]) => PASSES[name](j, value, context)));
}

function haystack(j, ledger, reviews) {
  const names = j.elements.map(e => `${e} ${ledger.elements.get(e)?.name ?? ''}`).join(' ');
  const codes = j.found.map(f => f.code).join(' '), note = reviews.get(j.id)?.note ?? '';
  return `${j.id} ${kindOf(j)} ${kindText(kindOf(j))} ${detailOf(j)} ${j.faces.join(' ')} ${names} ${codes} ${note}`.toLowerCase();
}

const GROUP = {
  kind: kindOf, detail: j => detailOf(j) || '–', seal: j => j.seal, face: j => j.faces[0] ?? '–',
  review: (j, reviews) => j.isJoint ? '–' : reviewOf(j, reviews),
};

/**
 * The rows to show; folded groups keep their heading only.
 * @param {import('../types.js').Outline} ledger
 * @param {{filters: object, sort: string, group: string, closed: Set<string>, reviews: Map}} choice
 * @returns {{list: object[], rows: {j?: object, group?: string, totals?: object, closed?: boolean}[], totals: object}}
 */
export function rows(ledger, {filters, sort, group, closed, reviews}) {
  const list = sorted(matching(ledger, filters, reviews), sort, reviews);
  const key = GROUP[group];
  if (!key) return {list, rows: list.map(j => ({j})), totals: totals(list)};
  const groups = new Map();
  for (const j of list) {
    const k = key(j, reviews);
    if (!groups.has(k)) groups.set(k, []);
    groups.get(k).push(j);
  }
  const inOrder = ([a], [b]) => rank(group, a) - rank(group, b) || a.localeCompare(b, 'en', {numeric: true});
  const out = [];
  for (const [k, members] of [...groups].sort(inOrder)) {
    out.push({group: k, totals: totals(members), closed: closed.has(k)});
    if (!closed.has(k)) members.forEach(j => out.push({j}));
  }
  return {list, rows: out, totals: totals(list)};
}

/** What is equal stays in the order of the result, up or down. */
function sorted(list, sort, reviews) {
  const down = sort.startsWith('-'), orders = order(reviews);
  const compare = orders[down ? sort.slice(1) : sort] ?? orders.place;
  return list.sort((a, b) => (down ? compare(b, a) : compare(a, b)) || a.place - b.place);
}

/** Groups stand in the order in which the trade names them, not in the alphabet's. */
function rank(group, key) {
  const known = {kind: KINDS, seal: SEALS, review: REVIEW}[group];
  return known ? Object.keys(known).indexOf(key) : 0;
}

/** Sums of a list of junctions. */
function totals(list) {
  const t = {count: list.length, lengthM: 0, tapeM: 0, beadM: 0, inSeamM: 0, screws: 0, findings: 0, modelledM: 0};
  for (const j of list) {
    for (const name of ['lengthM', 'tapeM', 'beadM', 'inSeamM', 'screws']) t[name] += j[name];
    t.findings += j.found.length;
    t.modelledM += j.modelledM ?? 0;
  }
  return t;
}
