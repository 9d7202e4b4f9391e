// Where lines end and meet: a list of all such points, by kind.

import {h, link, put, scrolling, table} from '../dom.js';
import {set, state, watch} from '../state.js';
import {SEVERITY} from '../ledger/marks.js';
import {capital, count} from '../units.js';

const MOST = 400;

export function mountNodes(root) {
  const draw = () => state.ledger && root.isConnected && put(root, content());
  watch(['ledger', 'nodeKind', 'selected'], draw);
  root.addEventListener('shown', draw);
}

const labelOf = kind => capital(state.ledger.nodeKinds.get(kind)?.label ?? kind);

function content() {
  const all = [...state.ledger.nodes.values()];
  const shown = all.filter(n => !state.nodeKind || n.kind === state.nodeKind);
  if (!all.length) return h('p', {class: 'empty'}, 'This result holds no nodes.');
  const head = ['Kind', 'Lines', 'Pieces', 'Findings', 'Id'].map((text, i) => ({text, num: i === 1 || i === 2}));
  return [h('h2', {}, `Nodes: ${count(all.length)} points where lines end and meet`), choice(all),
    scrolling('Nodes', table(head, shown.slice(0, MOST).map(row))),
    shown.length > MOST && h('p', {class: 'quiet'}, `The first ${MOST} of ${count(shown.length)}. Choose a kind to see fewer.`)];
}

function choice(all) {
  const counts = new Map();
  for (const n of all) counts.set(n.kind, (counts.get(n.kind) ?? 0) + 1);
  const kinds = [...state.ledger.nodeKinds.keys()].filter(k => counts.has(k));
  return h('p', {class: 'doings'}, h('label', {}, 'Kind ', h('select', {on: {change: e => set({nodeKind: e.target.value})}},
    h('option', {value: ''}, 'All kinds'),
    kinds.map(k => h('option', {value: k, selected: k === state.nodeKind}, `${labelOf(k)} (${counts.get(k)})`)))));
}

/** @param {import('../types.js').RoofNode} n */
function row(n) {
  const worst = n.found.map(f => SEVERITY[f.severity]?.sign ?? '').join(' ');
  return h('tr', {class: n.id === state.selected ? 'selected' : ''},
    h('td', {}, link(labelOf(n.kind), () => set({selected: n.id, face: ''}))), h('td', {class: 'num'}, count(n.junctions.length)),
    h('td', {class: 'num'}, count(n.pieces ?? 0)), h('td', {}, worst), h('td', {class: 'quiet'}, n.id));
}
