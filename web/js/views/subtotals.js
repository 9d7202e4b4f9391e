// The order divided by what it belongs to, fetched when somebody asks for it.

import {choice, h, num, put, scrolling, table} from '../dom.js';
import {state} from '../state.js';
import {fileName} from '../parts/save.js';
import {amount, money} from '../ledger/order.js';
import {KINDS} from '../ledger/marks.js';
import {titleOf} from '../ledger/result.js';
import * as api from '../api.js';
import {capital} from '../units.js';
import {written} from '../units/written.js';

const BY = ['kind', 'family', 'detail', 'junction', 'face', 'storey', 'model'];
const SHARED = 'for each that shares it';
const MOST_KEYS = 60;

/** What to divide by; kept while the page is open. */
let by = 'kind';
/** Whether it is unfolded: the order may be drawn anew at any moment. */
let unfolded = false;

/** A section that opens on request. */
export function subtotals() {
  const body = h('div', {}), save = h('a', {class: 'button', download: fileName('subtotals')}, 'Subtotals as CSV');
  const fetchAll = async () => {
    const id = state.analysis.id, asked = by;
    // Answers come in any order; what was asked for before is not wanted any more.
    const show = (...what) => by === asked && put(body, ...what);
    save.href = api.subtotalsAt(id, by);
    put(body, h('p', {class: 'quiet'}, 'Fetching the subtotals…'));
    try {
      const rows = await api.subtotals(id, by);
      show(shown(rows));
    } catch (e) {
      show(h('p', {role: 'alert'}, e.message));
    }
  };
  const pick = choice(BY.map(b => [b, b]), by, next => { by = next; fetchAll(); }, {'aria-label': 'Subtotals by'});
  return h('details', {class: 'cuts subtotals', open: unfolded || null, on: {toggle: e => {
    unfolded = e.currentTarget.open;
    if (unfolded) fetchAll();
  }}}, h('summary', {}, 'Subtotals'),
    h('p', {class: 'doings'}, h('label', {}, 'By ', pick), ' ', save), body);
}

/** @param {Object<string, string>[]} rows each a line of the order under a key; those of the whole order come last */
function shown(rows) {
  const shared = rows.some(r => r.counted === SHARED), keys = new Map();
  for (const r of rows) keys.set(r.key, [...keys.get(r.key) ?? [], r]);
  const more = keys.size - MOST_KEYS;
  return [h('p', {}, shared ? `A line that several share counts for each ${by} that shares it, so that these add up to more than `
      + 'the order; at the end each line stands once.' : `Each amount belongs to one ${by}: together they are the order's net amounts.`),
    [...keys].filter((_, i) => i < MOST_KEYS || i === keys.size - 1).map(([key, lines]) => group(key, lines, rows.some(r => r.cost))),
    more > 0 && h('p', {}, `The first ${MOST_KEYS} of ${keys.size}. The file has them all.`)];
}

/** Lines of one name differ by their size. */
function sizeOf(id) {
  const {size} = (state.ledger.raw.order ?? []).find(x => x.id === id) ?? {};
  return size && h('small', {}, ` ${written(size)}`);
}

/** What a key is called: a kind of lines or of nodes, a detail, or as it stands. */
const nameOf = key => by === 'kind' ? KINDS[key] ?? capital(state.ledger.nodeKinds.get(key)?.label ?? key)
  : capital(by === 'detail' ? titleOf(state.ledger, key) : key);

function group(key, lines, isPriced) {
  const title = nameOf(key), priced = lines.filter(l => l.cost);
  const sum = (priced.reduce((all, l) => all + Math.round(Number(l.cost) * 100), 0) / 100).toFixed(2);
  const row = l => h('tr', {}, h('td', {title: l.id}, capital(l.item), sizeOf(l.id)), num(amount(Number(l.net), l.unit)),
    isPriced && num(money(l.cost)));
  const heads = ['What', {text: 'Net', num: true}, ...(isPriced ? [{text: 'Cost', num: true}] : [])];
  return h('section', {}, h('h4', {}, title, priced.length > 0 && `: ${money(sum)} ${priced[0].currency}`),
    scrolling(title, table(heads, lines.map(row))));
}
