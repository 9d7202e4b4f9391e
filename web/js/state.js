// The one state of the page. Views read it, say with `set` what changes, and are called back when a name that they watch changed.

const DEFAULTS = {
  analysis: null,      // description of the analysis from the service
  ledger: null,        // the result, indexed (see ledger.js)
  reviews: new Map(),  // junction id -> review
  marks: new Map(),    // place of the finding -> what was done about it
  site: null,          // record of the work on the roof
  changes: null,       // difference to another revision
  problem: null,       // what went wrong, for the whole page
  overriding: '',      // junction whose override is being computed
  effect: null,        // what the last override changed in the order
  overrideChanges: null, // what all manual overrides change against the rules alone
  news: '',            // what another user changed meanwhile
  tab: 'ledger',
  pane: 'book',        // roof, book or detail: what a small screen shows
  view: 'both',        // plan, 3d or both
  selected: '',        // id of a junction or a node
  water: '',           // 'on' where the plan shows where the water goes
  spot: '',            // point of the plan whose catchment shows: x,y in metres
  face: '',            // roof face id under attention
  nodes: true,         // whether the drawings show where lines meet
  nodeKind: '',        // only nodes of this kind
  filters: {},         // by the names of FILTERS
  sort: '-length',
  group: 'kind',
  columns: null,       // ids of the columns that the user chose; null for as many as there is room for
  findingsAt: '',      // id of the line whose findings alone are listed
  places: null,        // {ids} of the lines that the drawings go to, as a finding names them
  closed: new Set(),   // groups folded away
  movement: '',        // "on" where the plan shows fixed lines and movement
  units: 'metric',
  theme: 'auto',
  against: '',         // analysis to compare with
};

/** Names that the address of the page holds, so that a link shows the same again. */
const IN_ADDRESS = ['tab', 'view', 'selected', 'water', 'spot', 'sort', 'group', 'units', 'against', 'movement'];
const FILTERS = ['kind', 'detail', 'seal', 'finding', 'face', 'element', 'review', 'override', 'modelled', 'text'];

export const state = {...DEFAULTS};
const watchers = [];
let pending = null;

/**
 * Calls fn when one of the names changes, once for all changes made in one go.
 * @param {string[]} names of the state
 * @param {(changed: Set<string>) => void} fn
 */
export function watch(names, fn) {
  watchers.push({names: new Set(names), fn});
}

/**
 * Changes the state.
 * @param {Partial<typeof DEFAULTS>} patch
 */
export function set(patch) {
  const changed = Object.keys(patch).filter(k => state[k] !== patch[k]);
  Object.assign(state, patch);
  changed.forEach(tell);
}

/** Calls who watches a name, also where what it stands for changed while its value did not. */
export function tell(name) {
  if (!pending) {
    pending = new Set();
    queueMicrotask(flush);
  }
  pending.add(name);
}

function flush() {
  const changed = pending;
  pending = null;
  for (const w of [...watchers]) if ([...w.names].some(n => changed.has(n))) w.fn(changed);
  if (IN_ADDRESS.some(n => changed.has(n)) || changed.has('filters')) writeAddress(changed.has('tab'));
}

/** Sets or clears one filter. */
export function filter(name, value) {
  const filters = {...state.filters};
  if (value) filters[name] = value; else delete filters[name];
  set({filters});
}

/** What the address says: the state to begin with, and the analysis to open. */
export function readAddress() {
  const q = new URLSearchParams(location.search);
  const patch = {filters: {}};
  for (const n of IN_ADDRESS) patch[n] = q.get(n) ?? DEFAULTS[n];
  for (const n of FILTERS) if (q.get('f.' + n)) patch.filters[n] = q.get('f.' + n);
  // Links of earlier versions call it so.
  if (q.get('f.hand')) patch.filters.override = q.get('f.hand');
  patch.units = q.get('units') ?? remembered('units') ?? 'metric';
  return {patch, analysis: q.get('analysis')};
}

/** The address that shows what is shown now, or the same with some of it otherwise. */
export function address(over = {}) {
  const q = new URLSearchParams();
  const all = {...state, ...over};
  if (all.analysis) q.set('analysis', all.analysis.id);
  for (const n of IN_ADDRESS) if (all[n] && all[n] !== DEFAULTS[n]) q.set(n, all[n]);
  for (const [n, v] of Object.entries(all.filters)) q.set('f.' + n, v);
  return '?' + q;
}

let restoring = false;
function writeAddress(step) {
  if (restoring || !state.analysis) return;
  const url = address();
  if (url === location.search) return;
  if (step) history.pushState(null, '', url); else history.replaceState(null, '', url);
}

addEventListener('popstate', () => {
  const {patch, analysis} = readAddress();
  if ((analysis ?? '') !== (state.analysis?.id ?? '')) return location.reload();
  restoring = true;
  set(patch);
  queueMicrotask(() => queueMicrotask(() => { restoring = false; }));
});

/** Small preferences of this browser; nothing of a model. */
export function remembered(name) {
  try { return localStorage.getItem('seamledger.' + name); } catch { return null; }
}

export function remember(name, value) {
  try { localStorage.setItem('seamledger.' + name, value); } catch { /* private windows keep nothing */ }
}
