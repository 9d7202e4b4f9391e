// What a user says of the chosen junction: its state, a note, and a kind or detail in the place of the rules'.

import {choice, field, h, put, say} from '../dom.js';
import {set, state} from '../state.js';
import {KINDS, REVIEW, kindText} from '../ledger/marks.js';
import {byRules} from '../ledger/result.js';
import {changesOverride, follow} from '../actions/overrides.js';
import {detailChoice} from './choices.js';
import * as api from '../api.js';

const NONE = {state: 'open', note: '', kind: '', detail: '', reason: '', stale: false, version: 0};
const given = r => Object.fromEntries(Object.entries(NONE).map(([k, v]) => [k, r?.[k] ?? v]));

/**
 * @param {import('../types.js').Junction} j
 * @param {import('../types.js').Review} [r] what was said so far
 */
export function review(j, r) {
  const was = given(r), message = h('p', {role: 'alert'});
  const note = h('textarea', {rows: 2, maxlength: 4000});
  note.value = was.note;
  const reason = h('input', {value: was.reason, maxlength: 4000});
  const kind = choice([['', `As the rules say: ${kindText(byRules(j).kind)}`], ...Object.entries(KINDS)], was.kind, () => detail.load());
  const detail = detailChoice(j, was.detail, () => kind.value);
  const save = to => store(j, was, message,
    {state: to ?? was.state, note: note.value, kind: kind.value, detail: detail.select.value, reason: reason.value});
  return h('section', {class: 'review'}, h('h3', {}, 'Review'),
    r?.carried && h('p', {class: 'quiet'}, 'Carried over from the revision before.'),
    states(was, save),
    field('Note', note),
    h('details', {open: was.kind || was.detail ? true : null, on: {toggle: e => e.currentTarget.open && detail.load()}},
      h('summary', {}, 'Manual override of kind or detail'),
      field('Kind', kind), field('Detail', detail.select), detail.gallery,
      field('Reason', reason, 'Needed; it shows wherever the junction does.')),
    message, h('p', {}, h('button', {class: 'main', on: {click: () => save()}}, 'Save')));
}

function states(was, save) {
  const offered = Object.entries(REVIEW).filter(([k]) => k !== 'recheck' || was.state === 'recheck');
  return h('div', {class: 'states', role: 'group', 'aria-label': 'State'}, offered.map(([k, x]) =>
    h('button', {'aria-pressed': String(was.state === k), on: {click: () => save(k)}}, `${x.sign} ${x.text}`)));
}

async function store(j, was, message, now) {
  try {
    const stored = await api.putReview(state.analysis.id, j.id, {version: was.version, ...now});
    set({reviews: new Map(state.reviews).set(j.id, stored)});
    document.activeElement?.blur();
    say(`Saved: ${REVIEW[stored.state].text}`);
    if (changesOverride(was, stored)) await follow(j.id);
  } catch (e) {
    put(message, e.message);
  }
}
