// The prices of a project: the file that it keeps, and what the order costs by it.

import {h, put} from '../dom.js';
import {state} from '../state.js';
import {costs, money} from '../ledger/order.js';
import * as api from '../api/prices.js';

const MOST_NAMED = 12;

/**
 * @param {Map<string, Object<string, string>>} rows of the order's table
 * @param {() => void} changed after the prices did
 */
export function prices(rows, changed) {
  const message = h('p', {role: 'alert', class: 'refused'});
  const project = state.analysis.project;
  const doing = async action => {
    try {
      await action();
      changed();
    } catch (e) {
      put(message, ...e.message.split('\n').map(line => h('span', {class: 'line'}, line, h('br'))));
    }
  };
  const input = h('input', {type: 'file', accept: '.csv,.txt', class: 'unseen', 'aria-label': 'Price list',
    on: {change: e => { const file = e.currentTarget.files[0]; if (file) doing(() => api.putPrices(project, file)); }}});
  const sum = costs(rows.values());
  return h('section', {class: 'prices'}, h('h3', {}, 'Prices'), sum.priced > 0 ? total(sum) : h('p', {}, 'A file of comma-separated values '
      + 'with the columns id, unit, price, labourHours, currency, note prices the order. An id may be a pattern, such as trim:*. '
      + 'The project keeps it.'),
    h('p', {class: 'doings'}, h('button', {on: {click: () => input.click()}}, 'Choose a price list…'), ' ',
      sum.priced > 0 && h('a', {class: 'button', href: api.pricesAt(project), download: 'prices.csv'}, 'The price list'), ' ',
      sum.priced > 0 && h('button', {on: {click: () => doing(() => api.removePrices(project))}}, 'Remove the prices'), input), message);
}

/** What the priced lines cost together, thousands apart. */
export const costWords = sum => `${money(sum.total)} ${sum.currency} for ${sum.priced} ${sum.priced === 1 ? 'line' : 'lines'}`
  + (Number(sum.hours) > 0 ? `, ${sum.hours} hours of labour` : '');

function total(sum) {
  const more = sum.unpriced.length - MOST_NAMED;
  return [h('p', {class: 'strong'}, costWords(sum)),
    sum.unpriced.length > 0 && h('p', {}, `Without a price, and not in this sum: ${sum.unpriced.slice(0, MOST_NAMED).join(', ')}`
      + (more > 0 ? ` and ${more} more.` : '.'))];
}
