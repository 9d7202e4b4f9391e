// Lines of the table: the head, rows and groups.

import {h, put} from '../dom.js';
import {set, state} from '../state.js';
import * as u from '../units.js';
import {groupNote, groupText} from './columns.js';
import {layout} from './layout.js';

/** A finger needs more room than a pointer. */
export const ROW = matchMedia('(pointer: coarse)').matches ? 42 : 30;

const classOf = c => [c.num && 'num', c.id === 'length' && 'first-number'].filter(Boolean).join(' ');
const cell = (c, content) => h('div', {role: 'gridcell', class: classOf(c)}, content);

/**
 * @param {{j?: object, group?: string, totals?: object, closed?: boolean}} r
 * @param {number} i its number in the table
 */
export function line(r, i) {
  return h('div', {
    role: 'row', id: 'row' + i, class: `line${r.j ? '' : ' group'}`, data: {at: i}, 'aria-rowindex': i + 2,
    'aria-expanded': r.j ? null : String(!r.closed),
    style: {top: i * ROW + 'px', 'grid-template-columns': layout.template},
  }, r.j ? layout.columns.map(c => cell(c, c.cell(r.j))) : groupCells(r));
}

/** A group's name takes the room of the columns before the length. */
const groupCells = r => [
  h('div', {role: 'gridcell', class: 'group-name', style: {'grid-column': `1 / ${layout.name + 1}`}}, r.closed ? '▸ ' : '▾ ',
    groupText(r.group), h('small', {}, ` ${u.count(r.totals.count)}`)),
  layout.columns.slice(layout.name).map(c => cell(c, c.id === 'length' ? u.run(r.totals.lengthM)
    : c.id === 'detail' ? groupNote(r.group) : c.sum?.(r.totals)))];

/** Shows whether a line is where the keyboard is, and whether its junction is the chosen one. */
export function mark(el, r, active) {
  el.classList.toggle('active', active);
  if (r.j) el.setAttribute('aria-selected', String(r.j.id === state.selected));
}

export function drawHeader(header) {
  const style = {'grid-template-columns': layout.template};
  put(header, h('div', {class: 'line head', role: 'row', 'aria-rowindex': 1, style}, layout.columns.map(head)));
}

function head(c) {
  const isSorted = state.sort.replace('-', '') === c.id, isDown = state.sort[0] === '-';
  const click = e => {
    e.stopPropagation();
    set({sort: nextSort(c)});
  };
  return h('div', {role: 'columnheader', class: classOf(c), 'aria-sort': isSorted ? (isDown ? 'descending' : 'ascending') : 'none'},
    h('button', {tabindex: 0, on: {click}}, c.title, isSorted ? (isDown ? ' ↓' : ' ↑') : ''));
}

/** Numbers begin with the largest, words with the first; a third click goes back to the longest first. */
function nextSort(c) {
  const [one, two] = c.num || c.id === 'findings' ? ['-' + c.id, c.id] : [c.id, '-' + c.id];
  return state.sort === one ? two : state.sort === two ? '-length' : one;
}
