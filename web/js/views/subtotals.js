// The order divided by what it belongs to, fetched when somebody asks for it.

import {choice, h, num, put, scrolling, table} from '../dom.js';
import {state} from '../state.js';
import {fileName} from '../parts/save.js';
import {amount} from '../ledger/order.js';
import {kindText} from '../ledger/marks.js';
import * as api from '../api.js';
import {capital} from '../units.js';

const BY = ['kind', 'family', 'detail', 'junction', 'face', 'storey', 'model'];
const SHARED = 'for each that shares it';
const MOST_KEYS = 60;

/** What to divide by; kept while the page is open. */
let by = 'kind';

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
  return h('details', {class: 'cuts subtotals', on: {toggle: e => e.currentTarget.open && fetchAll()}}, h('summary', {}, 'Subtotals'),
    h('p', {class: 'doings'}, h('label', {}, 'By ', pick), ' ', save), body);
}

/** @param {Object<string, string>[]} rows each a line of the order under a key; those of the whole order come last */
function shown(rows) {
  const shared = rows.some(r => r.counted === SHARED), keys = new Map();
  for (const r of rows) keys.set(r.key, [...keys.get(r.key) ?? [], r]);
  const more = keys.size - MOST_KEYS;
  return [h('p', {}, shared ? `A line that several share counts for each ${by} that shares it, so that these add up to more than `
      + 'the order; at the end each line stands once.' : `Each amount belongs to one ${by}: together they are the order's net amounts.`),
    [...keys].filter((_, i) => i < MOST_KEYS || i === keys.size - 1).map(([key, lines]) => group(key, lines)),
    more > 0 && h('p', {}, `The first ${MOST_KEYS} of ${keys.size}. The file has them all.`)];
}

function group(key, lines) {
  const title = by === 'kind' ? kindText(key) : capital(key), priced = lines.filter(l => l.cost);
  const sum = (priced.reduce((all, l) => all + Math.round(Number(l.cost) * 100), 0) / 100).toFixed(2);
  const row = l => h('tr', {}, h('th', {scope: 'row'}, capital(l.item), ' ', h('small', {}, l.id)), num(amount(Number(l.net), l.unit)),
    num(l.cost));
  return h('section', {}, h('h4', {}, title, priced.length > 0 && `: ${sum} ${priced[0].currency}`),
    scrolling(title, table(['What', {text: 'Net', num: true}, {text: 'Cost', num: true}], lines.map(row))));
}
