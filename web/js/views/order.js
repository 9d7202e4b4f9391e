// What to order: every number with what it came from, net to packs; the same as a list for a spreadsheet.

import {h, link, num, put, scrolling} from '../dom.js';
import {state, watch} from '../state.js';
import {costs, orderGroups} from '../ledger/order.js';
import {amounts} from '../parts/differences.js';
import {fileName} from '../parts/save.js';
import {alternates} from './alternates.js';
import {handedOn} from './handover.js';
import {cutList} from './cuts.js';
import {overridesSection} from './overrides.js';
import {costWords, prices} from './prices.js';
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
  const sum = costs(table.rows.values()), priced = sum.priced > 0;
  return [h('h2', {}, 'Order'),
    groups.length ? [lead(sum), groups.map(g => group(g, priced)), cutList(quantities), subtotals(),
      prices(table.rows, () => fetchTable(draw)), system && alternates(system)]
      : h('p', {class: 'empty'}, 'This result holds no order.'),
    overridesSection(), changed(), system && h('section', {class: 'current-system'}, h('h2', {}, 'Current roof system'),
      h('p', {}, 'Change a value, with its unit, and compute again: the result becomes the next revision, and what changed is shown.'),
      editor(system, draw))];
}

/** Goes to what stands farther down. */
const below = (text, css) => [link(text, () => document.querySelector(`.at-order ${css}`)?.scrollIntoView()), ' '];

function lead(sum) {
  const id = state.analysis.id;
  return [sum.priced > 0 && h('p', {class: 'strong'}, costWords(sum)), h('p', {}, 'Net is what the junctions and faces require together. '
    + 'Waste is added once, for the whole roof, and so is the rounding to whole packs.'),
    h('p', {class: 'doings'}, h('a', {class: 'button', href: api.orderAt(id), download: fileName('order')}, 'Order as CSV'), ' ',
      h('a', {class: 'button', href: api.cutsAt(id), download: fileName('cuts')}, 'Cut list as CSV'), ' ',
      h('a', {class: 'button', href: api.submittalAt(id, state.units), download: 'submittal.pdf'}, 'Submittal as PDF'), ' ',
      h('a', {class: 'button', href: api.reportAt(id), target: '_blank', rel: 'noopener'}, 'Report as text'), ' ',
      h('button', {on: {click: () => print()}}, 'Print')), handedOn(),
    h('p', {class: 'below'}, 'Below: ', below('Subtotals', '.subtotals'), below('Prices', '.prices'), below('Alternates', '.alternates'),
      below('Roof system', '.current-system'))];
}

/** What all lines of a group have in common of their sizes. */
const shared = lines => lines.length < 2 ? [] : parts(lines[0]).filter(p => lines.every(l => parts(l).includes(p)));
const parts = l => l.size ? l.size.split(', ') : [];

/** What the sizes of a group have in common stands once, in its head; costs have a column where the project has prices. */
function group({title, lines}, priced) {
  const common = shared(lines), rest = l => parts(l).filter(p => !common.includes(p)).join(', ');
  const heads = ['Net', 'With waste', 'To order', ...(priced ? ['Cost'] : [])];
  return h('section', {}, h('h3', {}, title, common.length > 0 && h('small', {}, ` ${common.join(', ')}`)), scrolling(title,
    h('table', {class: 'plain order-table' + (priced ? ' priced' : '')},
      h('thead', {}, h('tr', {}, h('th', {scope: 'col'}, 'What'), heads.map(text => h('th', {scope: 'col', class: 'num'}, text)),
        h('th', {scope: 'col'}, h('span', {class: 'unseen'}, 'How')))),
      h('tbody', {}, lines.map(l => line(l, rest(l), priced))))));
}

/** A unit at the end stays with its number. */
const unbroken = size => size.replace(/ (\S+)$/, '\u00a0$1');

/** @param {import('../types.js').OrderLine} l */
function line(l, size, priced) {
  const steps = h('tr', {class: 'how', hidden: true}, h('td', {colspan: priced ? 6 : 5}, h('ul', {}, l.how.map(s => h('li', {}, s)))));
  const button = h('button', {class: 'link', 'aria-expanded': 'false', 'aria-label': `How ${l.what} came about`, on: {click: () => {
    steps.hidden = !steps.hidden;
    button.setAttribute('aria-expanded', String(!steps.hidden));
  }}}, 'How');
  return [h('tr', {}, h('th', {scope: 'row'}, capital(l.what), size && h('small', {}, unbroken(size))), num(l.net), num(l.gross),
    h('td', {class: 'num strong'}, l.buy), priced && num(l.cost), h('td', {}, l.how.length > 0 && button)), l.how.length > 0 && steps];
}

const changed = () => state.changes && h('section', {class: 'changed'},
  h('h3', {}, `What changed since ${state.changes.fromWords}`), amounts(state.changes));
