// What became different: numbers of the order, and overrides that wait for another look.

import {h, link, num, table} from '../dom.js';
import {filter, set, state} from '../state.js';
import {differing} from '../ledger/amounts.js';
import {amount as packed} from '../ledger/order.js';
import * as u from '../units.js';
import {written} from '../units/written.js';

/**
 * The numbers of the order that differ, as a table; says so where none does.
 * @param {{quantities: import('../types.js').Amount[]}} c
 */
export function amounts(c) {
  const list = differing(c.quantities).filter(q => !/^order\./.test(q.name) || /\.order$/.test(q.name));
  if (!list.length) return h('p', {}, 'No number of the order changed.');
  return table(['Quantity', ...['Before', 'Now', 'Difference'].map(text => ({text, num: true}))], list.map(amount));
}

/** A line of the order is called as there, by its pack; other numbers say their unit by their names. */
function amount(q) {
  const line = /^order\.(.*)\.order$/.exec(q.name), l = line && (state.ledger.raw.order ?? []).find(x => x.id === line[1]);
  const text = x => x === null ? '–' : l ? packed(x, l.orderUnit) : u.byName(q.name.split('.').pop(), x);
  const both = q.before !== null && q.after !== null;
  const name = l ? [u.capital(l.item), l.size && h('small', {}, ` ${written(l.size)}`)] : line ? line[1]
    : q.name.split('.').map(u.words).join(', ');
  return h('tr', {}, h('td', {}, name), num(text(q.before)), num(text(q.after)),
    num(both ? `${q.after >= q.before ? '+' : '−'}${text(Math.abs(q.after - q.before))}` : ''));
}

/** How many overrides came over to lines that changed. */
export const staleCount = () => [...state.reviews.values()].filter(r => r.stale).length;

/** Leads to them. */
export function staleLink() {
  const n = staleCount();
  const show = () => {
    filter('override', 'stale');
    set({tab: 'ledger'});
  };
  return n > 0 && link(`${n} manual ${n === 1 ? 'override needs' : 'overrides need'} a new look`, show, {class: 'link overridden'});
}
