// Alternates as a table: amounts, differences and costs of every line of the order, and the findings that come and go.

import {h, num, scrolling} from '../dom.js';
import {capital, count, fixed} from '../units.js';
import {restOf, titleOf} from '../parts/findingwords.js';

const MOST_FINDINGS = 60;

const signed = (x, text = String(Math.abs(x))) => x === 0 ? '' : `${x > 0 ? '+' : '−'}${text}`;
const amountOf = cost => cost === undefined ? '' : fixed(Number(cost), 2);
/** @param {string | number} [cost] decimal, of a line that has a price */
const money = cost => cost === undefined ? '' : signed(Number(cost), fixed(Math.abs(Number(cost)), 2));

/** @param {{alternates: object[], order: object[], findings: object[]}} c as the service compares them */
export function sideBySide(c) {
  const priced = c.alternates.some(a => a.currency !== undefined);
  return h('div', {class: 'side-by-side'}, c.alternates.map((a, i) => total(a, c.alternates[0], i)),
    scrolling('Alternates side by side', h('table', {class: 'plain'}, head(c.alternates, priced),
      h('tbody', {}, c.order.map(l => line(l, priced))))),
    c.alternates.slice(1).map((a, i) => findings(a, c.findings, i + 1)));
}

function total(a, first, i) {
  if (a.total === undefined) return null;
  const by = (Number(a.total) - Number(first.total)).toFixed(2);
  return h('p', {}, h('strong', {}, a.name), `: ${amountOf(a.total)} ${a.currency}`, i > 0 && Number(by) !== 0 && ` (${money(by)})`,
    a.unpriced.length > 0 && `, without ${a.unpriced.length} ${a.unpriced.length === 1 ? 'line that has' : 'lines that have'} no price`);
}

const head = (alternates, priced) => h('thead', {}, h('tr', {}, h('th', {scope: 'col'}, 'To order'),
  alternates.map((a, i) => [h('th', {scope: 'col', class: 'num'}, a.name), i > 0 && h('th', {scope: 'col', class: 'num'}, 'Difference'),
    priced && h('th', {scope: 'col', class: 'num'}, i > 0 ? 'Cost difference' : 'Cost')])));

function line(l, priced) {
  const differs = l.amounts.some(a => a.orderDifference !== 0 || Number(a.costDifference ?? 0) !== 0);
  return h('tr', {class: differs ? 'differs' : ''},
    h('th', {scope: 'row', title: l.id}, capital(l.item), h('small', {}, `, ${l.orderUnit}`)),
    l.amounts.map((a, i) => [num(count(a.order)), i > 0 && num(signed(a.orderDifference, count(Math.abs(a.orderDifference)))),
      priced && num(i > 0 ? money(a.costDifference) : amountOf(a.cost))]));
}

function findings(a, all, i) {
  const some = ['comes', 'goes'].map(change => [change, all.filter(f => f.changes[i] === change)]).filter(([, list]) => list.length);
  const item = (change, f) => h('li', {class: f.severity}, h('strong', {}, capital(change)), ': ',
    titleOf(f), ' ', restOf(f), ' ', h('code', {}, f.code), ' ', f.junction && h('code', {}, f.junction));
  return h('section', {}, h('h4', {}, `Findings of ${a.name}`), some.length === 0 ? h('p', {}, 'The same as now.')
    : some.map(([change, list]) => [h('ul', {class: 'notes'}, list.slice(0, MOST_FINDINGS).map(f => item(change, f))),
      list.length > MOST_FINDINGS && h('p', {}, `and ${count(list.length - MOST_FINDINGS)} more`)]));
}
