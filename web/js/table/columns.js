// The columns of the ledger's table: what each shows of a junction, and of a group.

import {h} from '../dom.js';
import {state} from '../state.js';
import {REVIEW, SEALS, kindText} from '../ledger/marks.js';
import {detailOf, kindOf, reviewOf} from '../ledger/result.js';
import {swatch} from '../parts/legend.js';
import * as u from '../units.js';

/** A value that is zero says nothing in a ledger: the cell stays empty. */
const some = (value, text) => value > 0 ? text(value) : '';

/** Columns of numbers that are summed: id, title, width, name of the number, how it is written. */
const SUMS = [['tape', 'Tape', 90, 'tapeM', u.run], ['bead', 'Bead', 90, 'beadM', u.run], ['inseam', 'In-seam', 90, 'inSeamM', u.run],
  ['screws', 'Fasteners', 84, 'screws', u.count]];

/** @type {{id: string, title: string, width: number, num?: boolean, cell: Function, sum?: Function}[]} */
export const COLUMNS = [
  {id: 'review', title: 'Review', width: 78, cell: review},
  {id: 'kind', title: 'Kind', width: 160, cell: j => [kindText(kindOf(j)), overridden(j)]},
  {id: 'length', title: 'Length', width: 124, num: true, cell: j => u.length(j.lengthM)},
  {id: 'slope', title: 'Slope', width: 66, num: true, cell: j => u.slope(j.slope)},
  {id: 'faces', title: 'Faces', width: 86, cell: j => j.faces.join(' · ')},
  {id: 'seal', title: 'Sealed by', width: 226, cell: j => [swatch(j.seal), ' ', SEALS[j.seal].text]},
  {id: 'detail', title: 'Detail', width: 180, cell: j => state.ledger.choices.get(detailOf(j)) ?? detailOf(j)},
  ...SUMS.map(([id, title, width, name, text]) =>
    ({id, title, width, num: true, sum: t => some(t[name], text), cell: j => some(j[name], text)})),
  {id: 'modelled', title: 'In model', width: 92, num: true, sum: t => some(t.modelledM, u.run), cell: modelled},
  {id: 'findings', title: 'Findings', width: 190, sum: t => some(t.findings, u.count), cell: findings},
];
export const TEMPLATE = COLUMNS.map(c => c.width + 'px').join(' ');
/** A group's name takes the room of the first two. */
export const GROUP_TEMPLATE = TEMPLATE.replace('78px 160px', '238px');
export const WIDTH = COLUMNS.reduce((t, c) => t + c.width, 0);

function review(j) {
  const is = reviewOf(j, state.reviews), {sign, text} = REVIEW[is];
  return h('span', {class: 'state ' + is, title: text}, sign, h('span', {class: 'unseen'}, text));
}

function overridden(j) {
  if (state.reviews.get(j.id)?.stale) {
    return h('span', {class: 'overridden stale', title: 'Overridden before the line changed'}, ' ✎ look again');
  }
  const title = j.decided && `Manual override; the rules say ${kindText(j.decided.byRules.kind)}. ${j.decided.reason}`;
  return j.decided ? h('span', {class: 'overridden', title}, ' ✎ overridden') : '';
}

function modelled(j) {
  return [some(j.modelledM, u.run), j.gutterM > 0
    && h('span', {title: `Gutter along ${u.run(j.gutterM)}`}, ' ⊔', h('span', {class: 'unseen'}, ' gutter'))];
}

function findings(j) {
  const isOpen = f => state.marks.get(f.place)?.state !== 'accepted';
  const worst = ['violation', 'warning', 'info'].find(s => j.found.some(f => f.severity === s && isOpen(f)));
  return j.found.length ? h('span', {class: 'found ' + (worst ?? 'accepted')}, j.found.map(f => f.code).join(', ')) : '';
}

/** What a group of rows is called. */
export const groupText = k => state.group === 'kind' ? kindText(k) : state.group === 'seal' ? SEALS[k]?.text ?? k
  : state.group === 'review' ? REVIEW[k]?.text ?? k : k;
