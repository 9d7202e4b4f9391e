// What to order: every number with what it came from, net to packs; the same as a list for a spreadsheet.

import {h, num, put, scrolling} from '../dom.js';
import {state, watch} from '../state.js';
import {orderGroups} from '../ledger/order.js';
import {amounts} from '../parts/differences.js';
import {fileName} from '../parts/save.js';
import {alternates} from './alternates.js';
import {handedOn} from './handover.js';
import {cutList} from './cuts.js';
import {overridesSection} from './overrides.js';
import {prices} from './prices.js';
import {subtotals} from './subtotals.js';
import {editor} from './system.js';
import * as api from '../api.js';
import {capital} from '../units.js';

/** The order as a table, of the analysis that it was fetched for. */
const table = {of: '', rows: new Map()};

export function mountOrder(root) {
  const draw = () => state.ledger && root.isConnected && put(root, content(draw));
  watch(['ledger', 'units', 'changes', 'overrideChanges'], draw);
  root.addEventListener('shown', draw);
}

/** Fetches costs and arithmetic; without them the order is shown as it is. */
async function fetchTable(draw) {
  const id = state.analysis.id;
  const rows = await api.orderRows(id).catch(() => new Map());
  if (state.analysis?.id === id) {
    Object.assign(table, {of: key(), rows});
    draw();
  }
}

const key = () => `${state.analysis.id} ${state.analysis.ledgerSha256 ?? ''}`;

function content(draw) {
  const {quantities, system, order} = state.ledger.raw;
  if (table.of !== key()) {
    Object.assign(table, {of: key(), rows: new Map()});
    fetchTable(draw);
  }
  const groups = orderGroups(order ?? [], table.rows);
  return [h('h2', {}, 'Order'),
    groups.length ? [lead(), groups.map(group), cutList(quantities), subtotals(), prices(table.rows, () => fetchTable(draw)),
      system && alternates(system)]
      : h('p', {class: 'empty'}, 'This result holds no order.'),
    overridesSection(), changed(), system && h('section', {}, h('h2', {}, 'Current roof system'),
      h('p', {}, 'Change a value, with its unit, and compute again: the result becomes the next revision, and what changed is shown.'),
      editor(system, draw))];
}

function lead() {
  const id = state.analysis.id;
  return [h('p', {}, 'Net is what the junctions and faces require together. '
    + 'Waste is added once, for the whole roof, and so is the rounding to whole packs.'),
    h('p', {class: 'doings'}, h('a', {class: 'button', href: api.orderAt(id), download: fileName('order')}, 'Order as CSV'), ' ',
      h('a', {class: 'button', href: api.cutsAt(id), download: fileName('cuts')}, 'Cut list as CSV'), ' ',
      h('a', {class: 'button', href: api.submittalAt(id, state.units), download: 'submittal.pdf'}, 'Submittal as PDF'), ' ',
      h('a', {class: 'button', href: api.reportAt(id), target: '_blank', rel: 'noopener'}, 'Report as text'), ' ',
      h('button', {on: {click: () => print()}}, 'Print')), handedOn()];
}

function group({title, lines}) {
  const head = text => h('th', {scope: 'col', class: 'num'}, text);
  return h('section', {}, h('h3', {}, title), scrolling(title, h('table', {class: 'plain order-table'},
    h('thead', {}, h('tr', {}, h('th', {scope: 'col'}, 'What'), ['Net', 'With waste', 'To order', 'Cost'].map(head),
      h('th', {scope: 'col'}, 'How'))),
    h('tbody', {}, lines.map(line)))));
}

/** @param {import('../types.js').OrderLine} l */
const line = l => h('tr', {}, h('th', {scope: 'row'}, capital(l.what), l.size && h('small', {}, l.size)), num(l.net), num(l.gross),
  h('td', {class: 'num strong'}, l.buy), num(l.cost), h('td', {}, how(l.how)));

const how = steps => steps.length > 0 && h('details', {}, h('summary', {}, 'Arithmetic'), steps.map(s => h('small', {}, s, h('br'))));

const changed = () => state.changes && h('section', {class: 'changed'},
  h('h3', {}, `What changed since ${state.changes.fromWords}`), amounts(state.changes));
