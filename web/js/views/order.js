// What to order: every number with what it came from, net to packs; the same as a list for a spreadsheet.

import {h, num, put, scrolling} from '../dom.js';
import {state, watch} from '../state.js';
import {orderGroups} from '../ledger/order.js';
import {amounts} from '../parts/differences.js';
import {save} from '../parts/save.js';
import {cutList} from './cuts.js';
import {overridesSection} from './overrides.js';
import {editor} from './system.js';
import * as api from '../api.js';
import {capital} from '../units.js';

export function mountOrder(root) {
  const draw = () => state.ledger && root.isConnected && put(root, content(draw));
  watch(['ledger', 'units', 'changes', 'overrideChanges'], draw);
  root.addEventListener('shown', draw);
}

function content(draw) {
  const {quantities, system} = state.ledger.raw;
  const groups = quantities && Object.keys(quantities).length ? orderGroups(quantities, system ?? {}) : [];
  return [h('h2', {}, 'Order'),
    groups.length ? [lead(groups), groups.map(group), cutList(quantities)] : h('p', {class: 'empty'}, 'This result holds no quantities.'),
    overridesSection(), changed(), system && h('section', {}, h('h2', {}, 'Current roof system'),
      h('p', {}, 'Change a value, with its unit, and compute again: the result becomes the next revision, and what changed is shown.'),
      editor(system, draw))];
}

function lead(groups) {
  const id = state.analysis.id;
  return [h('p', {}, 'Net is what the junctions require together. '
    + 'Waste is added once, for the whole roof, and so is the rounding to whole packs.'),
    h('p', {class: 'doings'}, h('button', {on: {click: () => save('order.csv', csv(groups))}}, 'Save the order as CSV'), ' ',
      h('a', {class: 'button', href: api.cutsAt(id), download: 'cuts.csv'}, 'Cut list as CSV'), ' ',
      h('a', {class: 'button', href: api.reportAt(id), target: '_blank', rel: 'noopener'}, 'Report as text'), ' ',
      h('button', {on: {click: () => print()}}, 'Print'))];
}

const joined = v => [v].flat().filter(Boolean).join(', ');

function group({title, lines}) {
  const head = text => h('th', {scope: 'col', class: 'num'}, text);
  return h('section', {}, h('h3', {}, title), scrolling(title, h('table', {class: 'plain order-table'},
    h('thead', {}, h('tr', {}, h('th', {scope: 'col'}, 'What'), ['Net', 'With waste', 'To order'].map(head),
      h('th', {scope: 'col'}, 'How'))),
    h('tbody', {}, lines.map(line)))));
}

/** @param {import('../types.js').OrderLine} l */
const line = l => h('tr', {class: l.sub ? 'sub' : ''},
  h('th', {scope: 'row'}, l.sub ? l.what : capital(l.what), l.size && h('small', {}, l.size)),
  num([l.net].flat().filter(Boolean).map((n, i) => [i > 0 && h('br'), n])),
  num(l.gross ?? ''), h('td', {class: 'num strong'}, l.buy ?? ''), h('td', {}, h('small', {}, joined(l.how))));

const csv = groups => [['group', 'what', 'size', 'net', 'withWaste', 'order', 'how'], ...groups.flatMap(g => g.lines.map(l =>
  [g.title, l.what, l.size ?? '', joined(l.net), l.gross ?? '', l.buy ?? '', joined(l.how)]))];

const changed = () => state.changes && h('section', {class: 'changed'},
  h('h3', {}, `What changed since ${state.changes.fromWords}`), amounts(state.changes));
