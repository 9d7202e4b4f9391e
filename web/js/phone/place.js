// One junction or node: what it is, its drawing, what to tick, what was said, and where it goes on.

import {h, put} from '../dom.js';
import {checklist} from './checklist.js';
import {drawing} from './drawing.js';
import {deviate, lot, note, signOff, withdraw} from './events.js';
import {camera, gallery} from './photos.js';
import {nameOf, partOf} from './names.js';
import {open, places, standingOf} from './roof.js';
import {SAID, STAGE, length, run, small, when} from './words.js';

/** @param {object} place @param {(place: object) => void} go to another one @param {() => void} toPlan shows it there */
export function showPlace(root, place, go, toPlan) {
  const s = standingOf(place), stage = STAGE[s.stage];
  put(root, h('article', {class: 'place', data: {place: place.id}},
    h('h1', {}, nameOf(place.id), ' ', h('small', {}, `${partOf(place.id)} ${place.id}`)),
    h('p', {class: `stage-line ${s.stage}`}, h('b', {}, `${stage.sign} ${stage.text}`), place.lengthM > 0 && `, ${length(place.lengthM)}`,
      s.signed && `, by ${s.signed.by}, ${when(s.signed.at)}`, s.waits > 0 && `, ${s.waits} waiting to be sent`),
    drawing(place), s.items.length ? checklist(s) : h('p', {}, 'There is nothing to tick here: no detail has hold points for it.'),
    open.roof.scope !== 'view' && h('div', {class: 'more'}, camera(place),
      h('button', {class: 'big', on: {click: () => lot(place)}}, 'Sealant lot'),
      h('button', {class: 'big', on: {click: () => note(place)}}, 'Note'),
      h('button', {class: 'big', on: {click: () => deviate(place)}}, 'Deviation')),
    open.roof.scope === 'sign' && signing(s), gallery(s.events), counts(place), neighbours(place, go, toPlan), history(s)));
}

function signing(s) {
  const isSettled = i => i.isStep || ['ticked', 'deviates'].includes(i.standing);
  const ready = s.stage === 'checked' || s.stage === 'recheck' && s.items.every(isSettled);
  return h('div', {class: 'signing'}, s.stage === 'signed'
    ? h('button', {class: 'big', on: {click: () => withdraw(s.place)}}, 'Take the sign-off back')
    : h('button', {class: 'big main', disabled: !ready, on: {click: () => signOff(s.place)}},
      ready ? 'Sign off' : 'Sign off (all hold points first)'));
}

function counts(place) {
  const lines = [
    ...(place.metal ?? []).map(m => `${m.part}${m.face ? ' on ' + m.face : ''}: ${m.pieces} pc, ${run(m.lengthM)}`),
    ...(place.seals ?? []).map(x => `${x.form} ${x.place}${x.face ? ' on ' + x.face : ''}: ${run(x.lengthM)}`),
    ...(place.fasteners ?? []).map(f =>
      [`${f.count} ${(f.type ?? 'fasteners').replaceAll('-', ' ')}, ${f.place}`, f.face && ` on ${f.face}`,
        f.spacingM && ` at ${small(f.spacingM)}`])];
  return lines.length > 0 && h('details', {}, h('summary', {}, 'What goes here'), h('ul', {}, lines.map(t => h('li', {}, t))));
}

/** Walking the roof: what meets this place. */
function neighbours(place, go, toPlan) {
  const meets = place.at ? place.junctions : (open.sheet.nodes ?? []).filter(n => n.junctions.includes(place.id))
    .flatMap(n => [n.id, ...n.junctions]);
  const ids = [...new Set(meets)].filter(id => id !== place.id);
  return h('nav', {class: 'neighbours', 'aria-label': 'Next to it'}, h('h2', {}, 'Next to it'),
    h('button', {class: 'big', on: {click: toPlan}}, 'Where it is on the plan'),
    ids.map(id => places().find(p => p.id === id)).filter(Boolean).map(p => h('button', {class: 'big', on: {click: () => go(p)}},
      `${STAGE[standingOf(p).stage].sign} ${nameOf(p.id)} `, h('small', {}, partOf(p.id)))));
}

function history(s) {
  return s.events.length > 0 && h('details', {}, h('summary', {}, `What was said here (${s.events.length})`), h('ul', {class: 'history'},
    [...s.events].reverse().map(e => h('li', {}, `${when(e.at)}, ${e.by}: ${SAID[e.kind]}`,
      e.point && `, ${e.point.split('/')[1].replaceAll('-', ' ')}`,
      e.text && `. ${e.text}`))));
}
