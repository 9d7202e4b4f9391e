// What became different: numbers of the order, and overrides that wait for another look.

import {h, link, num, table} from '../dom.js';
import {filter, set, state} from '../state.js';
import {differing} from '../ledger/amounts.js';
import * as u from '../units.js';

/**
 * The numbers of the order that differ, as a table; says so where none does.
 * @param {{quantities: import('../types.js').Amount[]}} c
 */
export function amounts(c) {
  const list = differing(c.quantities);
  if (!list.length) return h('p', {}, 'No number of the order changed.');
  return table(['Quantity', ...['Before', 'Now', 'Difference'].map(text => ({text, num: true}))], list.map(amount));
}

function amount(q) {
  const text = x => x === null ? '–' : u.byName(q.name.split('.').pop(), x);
  const both = q.before !== null && q.after !== null;
  return h('tr', {}, h('td', {}, q.name.split('.').map(u.words).join(', ')), num(text(q.before)), num(text(q.after)),
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
