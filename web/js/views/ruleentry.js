// One rule: what it is for and requires, its limits to edit, its examples, and the lines of this roof that it applies to.

import {freshId, h, link, put} from '../dom.js';
import {set, state} from '../state.js';
import {SEVERITY} from '../ledger/marks.js';
import {junctionsOf} from '../ledger/result.js';
import {factName, inWords, unitOf} from '../parts/factwords.js';
import {edits} from './ruletrial.js';
import * as u from '../units.js';
import {written} from '../units/written.js';

/** Ids of the lines and nodes of this roof that a rule decided or speaks of. */
export function appliesTo(e) {
  const {lines, nodes, findings} = state.ledger;
  if (e.sort === 'kind') return lines.filter(j => j.kind === e.id).map(j => j.id);
  if (e.sort === 'detail') return lines.filter(j => j.detail === e.id).map(j => j.id);
  if (e.sort === 'node') return [...nodes.values()].filter(n => n.kind === e.id).map(n => n.id);
  // A finding about the roof as a whole has no place, and counts all the same.
  const placesOf = f => junctionsOf(f).length ? junctionsOf(f) : [''];
  return e.sort === 'finding' ? findings.filter(f => f.code === e.id).flatMap(placesOf) : [];
}

/**
 * @param {object} e entry of the rules
 * @param {{limits: object[], examples: object[]}} rules
 * @param {Set<string>} open ids of the entries that are unfolded
 */
export function ruleEntry(e, rules, open, draw) {
  const where = appliesTo(e), key = `${e.sort} ${e.id}`, body = h('div', {class: 'rule-body'});
  const fill = () => body.childElementCount || put(body, content(e, where, rules, draw));
  const toggle = () => {
    if (el.open) fill();
    if (el.open) open.add(key); else open.delete(key);
  };
  const el = h('details', {class: 'rule', data: {rule: key}, open: open.has(key) || null, on: {toggle}},
    h('summary', {}, e.severity && h('span', {class: `found ${e.severity}`}, SEVERITY[e.severity]?.sign, ' '),
      h('span', {class: 'rule-title'}, h('b', {}, titleOf(e)), h('small', {}, ` ${e.id}`)),
      h('span', {class: 'here'}, where.length ? `${u.count(where.length)} here` : '')), body);
  if (el.open) fill();
  return el;
}

/** A finding's message begins with what is wrong; its numbers are those of a place. */
function titleOf(e) {
  const text = e.title.replace(/\{(\w+)\}/g, (all, fact) => fact === 'kind' ? 'line' : '…');
  return u.capital(e.sort === 'finding' ? text.split(/[:;] /)[0] : text);
}

const content = (e, where, rules, draw) => [e.why.filter(Boolean).map(text => h('p', {class: 'advice'}, written(text))),
  h('p', {class: 'requires'}, h('b', {}, e.sort === 'finding' ? 'Nothing is said where: ' : 'Requires: '),
    written(inWords(e.requires)) || 'nothing'),
  limits(e, rules, draw), examples(e, rules), onRoof(e, where),
  h('p', {class: 'quiet'}, `Stands in ${e.place.replace(':', ', line ')}.`)];

function limits(e, rules, draw) {
  const own = rules.limits.filter(l => e.limits.includes(l.id));
  return own.length > 0 && h('section', {}, h('h4', {}, 'Limits'), own.map(l => limitRow(l, draw)));
}

/** A limit with a field to change it. */
export function limitRow(l, draw) {
  const unit = unitOf(l.fact), now = edits.limits.get(l.id) ?? l.value, id = freshId();
  const input = h('input', {id, value: now, inputmode: 'decimal', maxlength: 20, data: {limit: l.id},
    class: edits.limits.has(l.id) ? 'edited' : '', on: {change: () => {
      if (input.value.trim() === l.value) edits.limits.delete(l.id); else edits.limits.set(l.id, input.value.trim());
      edits.forget();
      const rule = input.closest('[data-rule]')?.dataset.rule ?? '', focused = document.activeElement === input;
      draw();
      if (focused) document.querySelector(`${rule && `[data-rule="${rule}"] `}[data-limit="${l.id}"]`)?.focus();
    }}});
  return h('div', {class: 'limit'}, h('label', {for: id}, `${u.capital(l.shape)}: ${factName(l.fact)} ${l.comparison}`), input,
    h('span', {}, unit, state.units === 'us' && /M$/.test(l.fact) && ` = ${u.small(Number(now))}`),
    edits.limits.has(l.id) && h('small', {}, `was ${l.value}${unit === '°' ? '' : ' '}${unit}`),
    l.note && h('small', {class: 'note'}, written(l.note)));
}

function examples(e, rules) {
  const own = rules.examples.filter(x => x.shapes.includes(e.shape));
  return own.length > 0 && h('section', {}, h('h4', {}, 'Examples'), h('ul', {class: 'examples'}, own.map(x =>
    h('li', {}, x.holds ? '✓ holds: ' : '✗ does not hold: ', h('code', {}, x.file), x.differences.map(d => h('small', {}, ` ${d}.`))))));
}

function onRoof(e, where) {
  const ids = [...new Set(where.filter(Boolean))];
  const show = () => set({places: {ids}, selected: '', face: '', pane: 'roof'});
  const lengthM = ids.reduce((t, id) => t + (state.ledger.byId.get(id)?.lengthM ?? 0), 0);
  return h('p', {}, h('b', {}, 'On this roof: '), where.length === 0 ? 'nowhere.'
    : ids.length === 0 ? 'about the roof or its system as a whole.'
      : [u.count(ids.length), ids.length === 1 ? ' place' : ' places', lengthM > 0 && `, ${u.run(lengthM)}`, '. ',
        link(ids.length === 1 ? 'Show it' : 'Show them', show)]);
}
