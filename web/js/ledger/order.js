// The order of a result as groups of lines, as the service counted it; what it costs and how it came about stand in its table.

import * as u from '../units.js';
import {written} from '../units/written.js';

const GROUPS = {panels: 'Panels', clips: 'Clips', underlayment: 'Underlayment', sealants: 'Sealants', closures: 'Closures', trims: 'Trims',
  penetrations: 'Penetrations', fasteners: 'Fasteners', drainage: 'Drainage', sundries: 'Sundries'};

const MEASURED = {m: u.run, m2: u.area, ml: u.volume};

/** Packs and pieces, in the plural where there are several. */
const packs = (n, unit) => `${u.count(n)} ${n === 1 ? unit : unit.replace(/(x|s|ch)$/, '$1e') + 's'}`;
/** A decimal of the price list with its thousands apart; empty where there is none. */
export const money = decimal => decimal ? u.fixed(Number(decimal), 2) : '';
/** An amount in the unit of its line. */
export const amount = (x, unit) => MEASURED[unit] ? MEASURED[unit](x) : packs(x, unit);

/**
 * @param {object[]} order lines of the result
 * @param {Map<string, Object<string, string>>} rows of the order's table by id; empty until it is here
 * @returns {{title: string, lines: import('../types.js').OrderLine[]}[]} what isn't needed has no line
 */
export function orderGroups(order, rows) {
  const line = l => ({what: l.item, size: written(l.size), net: amount(l.net, l.unit),
    gross: l.wastePercent > 0 ? amount(l.withWaste, l.unit) : '', buy: amount(l.order, l.orderUnit),
    cost: money(rows.get(l.id)?.cost), how: rows.get(l.id)?.arithmetic.split('; ').map(written) ?? []});
  return Object.entries(GROUPS).map(([group, title]) => ({title, lines: order.filter(l => l.group === group).map(line)}))
    .filter(g => g.lines.length);
}

/**
 * What an order costs, from its table: hundredths are added as whole numbers, so that no sum has a tail.
 * @param {Iterable<Object<string, string>>} rows
 */
export function costs(rows) {
  const all = [...rows], priced = all.filter(r => r.cost);
  const hundredths = priced.reduce((sum, r) => sum + Math.round(Number(r.cost) * 100), 0);
  const hours = priced.reduce((sum, r) => sum + Math.round(Number(r.labourHours) * 100), 0);
  return {total: (hundredths / 100).toFixed(2), hours: (hours / 100).toFixed(2), currency: priced.find(r => r.currency)?.currency ?? '',
    priced: priced.length, unpriced: all.filter(r => !r.cost).map(r => r.id)};
}
