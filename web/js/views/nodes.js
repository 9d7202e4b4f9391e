// Where lines end and meet: all such points in groups by kind, folded.

import {h, link, put, scrolling, table} from '../dom.js';
import {set, state, watch} from '../state.js';
import {SEVERITY, kindText} from '../ledger/marks.js';
import {kindOf} from '../ledger/result.js';
import {capital, count} from '../units.js';

const MOST = 200;

/** Kinds that are unfolded: of this page alone. */
const open = new Set();

export function mountNodes(root) {
  const draw = () => state.ledger && root.isConnected && put(root, content());
  watch(['ledger', 'nodeKind', 'selected'], draw);
  root.addEventListener('shown', draw);
}

const labelOf = kind => capital(state.ledger.nodeKinds.get(kind)?.label ?? kind);

function content() {
  const all = [...state.ledger.nodes.values()];
  if (!all.length) return h('p', {class: 'empty'}, 'This result holds no nodes.');
  const groups = new Map([...state.ledger.nodeKinds.keys(), ...all.map(n => n.kind)].map(k => [k, []]));
  for (const n of all) groups.get(n.kind).push(n);
  return [h('h2', {}, `Nodes: ${count(all.length)} points where lines end and meet`),
    state.nodeKind && h('p', {}, h('button', {class: 'chip', title: 'Show the nodes of all kinds', on: {click: () => set({nodeKind: ''})}},
      `On the roof: ${labelOf(state.nodeKind)} ×`)),
    [...groups].filter(([, list]) => list.length).map(group)];
}

function group([kind, list]) {
  const hasChosen = list.some(n => n.id === state.selected), findings = list.reduce((t, n) => t + n.found.length, 0);
  const el = h('details', {class: 'node-group', open: open.has(kind) || hasChosen || null, data: {kind}, on: {toggle: () => {
    if (el.open) fill();
    if (el.open) open.add(kind); else open.delete(kind);
  }}}, h('summary', {}, h('b', {}, labelOf(kind)), ' ', h('small', {}, count(list.length)),
    findings > 0 && h('span', {class: 'here'}, findings === 1 ? '1 finding' : `${count(findings)} findings`)));
  const fill = () => el.childElementCount > 1 || el.append(listed(kind, list));
  if (el.open) fill();
  return el;
}

function listed(kind, list) {
  const only = () => set({nodeKind: kind, nodes: true});
  return h('div', {}, h('p', {}, link('Show only these on the roof', only)),
    scrolling(labelOf(kind), table(['Faces', 'Lines', {text: 'Pieces', num: true}, 'Findings', 'Id'], list.slice(0, MOST).map(row))),
    list.length > MOST && h('p', {class: 'quiet'}, `The first ${MOST} of ${count(list.length)}.`));
}

/** @param {import('../types.js').RoofNode} n */
function row(n) {
  const lines = n.junctions.map(id => state.ledger.byId.get(id)).filter(Boolean).map(j => kindText(kindOf(j)));
  const signs = n.found.map(f => SEVERITY[f.severity]?.sign ?? '').join(' ');
  return h('tr', {class: n.id === state.selected ? 'selected' : '', 'aria-current': n.id === state.selected ? 'true' : null},
    h('td', {}, link(n.faces.join(', ') || n.id, () => set({selected: n.id, face: ''}))), h('td', {}, lines.join(' · ')),
    h('td', {class: 'num'}, count(n.pieces ?? 0)), h('td', {}, signs), h('td', {class: 'quiet'}, n.id));
}
