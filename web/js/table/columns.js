// The columns of the ledger's table: what each shows of a junction, and of a group.

import {h} from '../dom.js';
import {set, state} from '../state.js';
import {REVIEW, SEALS, SEVERITY, kindText} from '../ledger/marks.js';
import {detailOf, kindOf, reviewOf} from '../ledger/result.js';
import {titleOf} from '../parts/findingwords.js';
import {swatch} from '../parts/legend.js';
import * as u from '../units.js';

/** A value that is zero says nothing in a ledger: the cell stays empty. */
const some = (value, text) => value > 0 ? text(value) : '';

/** Columns of numbers that are summed: id, title, width, name of the number, how it is written, rank. */
const SUMS = [['tape', 'Tape', 88, 'tapeM', u.run, 8], ['bead', 'Bead', 88, 'beadM', u.run, 9],
  ['inseam', 'In-seam', 84, 'inSeamM', u.run, 12], ['screws', 'Fasteners', 84, 'screws', u.count, 10]];

/**
 * All columns in their order. Where there is no room for all, those of the lowest rank show; `grow` says who takes the room that is left.
 * @type {{id: string, title: string, width: number, rank: number, grow?: number, num?: boolean, cell: Function, sum?: Function}[]}
 */
export const COLUMNS = [
  {id: 'review', title: 'Review', width: 74, rank: 3, cell: review},
  {id: 'kind', title: 'Kind', width: 154, rank: 0, grow: 4,
    cell: j => [h('span', {title: kindText(kindOf(j))}, kindText(kindOf(j))), overridden(j)]},
  {id: 'length', title: 'Length', width: 112, rank: 1, num: true, cell: j => u.length(j.lengthM)},
  {id: 'slope', title: 'Slope', width: 66, rank: 6, num: true, cell: j => u.slope(j.slope)},
  {id: 'faces', title: 'Faces', width: 88, rank: 7, cell: j => j.faces.join(' · ')},
  {id: 'seal', title: 'Sealed by', width: 224, rank: 5, cell: j => [swatch(j.seal), ' ', SEALS[j.seal].text]},
  {id: 'detail', title: 'Detail', width: 146, rank: 4, grow: 5, cell: shortDetail},
  ...SUMS.map(([id, title, width, name, text, rank]) =>
    ({id, title, width, rank, num: true, sum: t => some(t[name], text), cell: j => some(j[name], text)})),
  {id: 'modelled', title: 'In model', width: 92, rank: 11, num: true, sum: t => some(t.modelledM, u.run), cell: modelled},
  {id: 'findings', title: 'Findings', width: 84, rank: 2, sum: t => some(t.findings, u.count), cell: findings},
];

/** What stands before the colon of a detail's title names it; the rest says how it is made. */
function shortDetail(j) {
  const title = detailTitle(detailOf(j));
  return h('span', {title}, u.capital(title.split(/[:;(]/)[0].trim()));
}

const detailTitle = id => state.ledger.choices.get(id) ?? id;

/** What tells a group of details from its neighbours stands last in the title. */
export const groupNote = k => state.group === 'detail'
  && h('small', {title: detailTitle(k)}, detailTitle(k).split(/[:,;] /).slice(1).pop());

function review(j) {
  if (j.isJoint) return '';
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
  const isOpen = f => state.marks.get(f.place)?.state !== 'accepted', open = j.found.filter(isOpen);
  const worst = ['violation', 'warning', 'info'].find(s => open.some(f => f.severity === s));
  if (!j.found.length) return '';
  const title = j.found.map(titleOf).join('\n');
  const show = e => {
    e.stopPropagation();
    set({tab: 'findings', findingsAt: j.id, selected: j.id, pane: 'book'});
  };
  return h('button', {class: 'link found ' + (worst ?? 'accepted'), title, tabindex: -1, on: {click: show}},
    `${SEVERITY[worst ?? 'info'].sign} ${u.count(worst ? open.length : j.found.length)}`,
    h('span', {class: 'unseen'}, ` ${worst ? SEVERITY[worst].text : 'accepted'}, show in the list of findings`));
}

/** What a group of rows is called. */
export const groupText = k => state.group === 'detail' ? u.capital(detailTitle(k).split(/[:;(]/)[0].trim())
  : state.group === 'kind' ? kindText(k) : state.group === 'seal' ? SEALS[k]?.text ?? k
  : state.group === 'review' ? REVIEW[k]?.text ?? k : k;
