// Lines of the table: the head, rows and groups.

import {h, put} from '../dom.js';
import {set, state} from '../state.js';
import * as u from '../units.js';
import {COLUMNS, GROUP_TEMPLATE, TEMPLATE, groupText} from './columns.js';

/** A finger needs more room than a pointer. */
export const ROW = matchMedia('(pointer: coarse)').matches ? 42 : 30;

const cell = (c, content) => h('div', {role: 'gridcell', class: c.num ? 'num' : ''}, content);

/**
 * @param {{j?: object, group?: string, totals?: object, closed?: boolean}} r
 * @param {number} i its number in the table
 */
export function line(r, i) {
  const cells = r.j ? COLUMNS.map(c => cell(c, c.cell(r.j)))
    : [h('div', {role: 'gridcell', class: 'group-name'}, r.closed ? '▸ ' : '▾ ', groupText(r.group),
      h('small', {}, ` ${u.count(r.totals.count)}`)),
    cell({num: true}, u.run(r.totals.lengthM)), ...COLUMNS.slice(3).map(c => cell(c, c.sum?.(r.totals)))];
  return h('div', {
    role: 'row', id: 'row' + i, class: `line${r.j ? '' : ' group'}`, data: {at: i}, 'aria-rowindex': i + 2,
    'aria-expanded': r.j ? null : String(!r.closed),
    style: {top: i * ROW + 'px', 'grid-template-columns': r.j ? TEMPLATE : GROUP_TEMPLATE},
  }, cells);
}

/** Shows whether a line is where the keyboard is, and whether its junction is the chosen one. */
export function mark(el, r, active) {
  el.classList.toggle('active', active);
  if (r.j) el.setAttribute('aria-selected', String(r.j.id === state.selected));
}

export function drawHeader(header) {
  const style = {'grid-template-columns': TEMPLATE};
  put(header, h('div', {class: 'line head', role: 'row', 'aria-rowindex': 1, style}, COLUMNS.map(head)));
}

function head(c) {
  const isSorted = state.sort.replace('-', '') === c.id, isDown = state.sort[0] === '-';
  const click = e => {
    e.stopPropagation();
    set({sort: nextSort(c)});
  };
  return h('div', {role: 'columnheader', class: c.num ? 'num' : '', 'aria-sort': isSorted ? (isDown ? 'descending' : 'ascending') : 'none'},
    h('button', {tabindex: 0, on: {click}}, c.title, isSorted ? (isDown ? ' ↓' : ' ↑') : ''));
}

/** Numbers begin with the largest, words with the first; a third click goes back to the longest first. */
function nextSort(c) {
  const [one, two] = c.num || c.id === 'findings' ? ['-' + c.id, c.id] : [c.id, '-' + c.id];
  return state.sort === one ? two : state.sort === two ? '-length' : one;
}
