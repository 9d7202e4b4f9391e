// The hold points and steps of a place, each large enough for a thumb in a glove.

import {h} from '../dom.js';
import {pointer} from './drawing.js';
import {deviate, fail, tick, untick} from './events.js';
import {open} from './roof.js';
import {SAID, capital, when} from './words.js';

/** @param {object} s how the place stands */
export const checklist = s => h('ol', {class: 'checklist'}, s.items.map(i => row(s, i)));

const may = () => open.roof.scope !== 'view';

function row(s, i) {
  const isOpen = !['ticked', 'deviates'].includes(i.standing);
  return h('li', {class: `item ${i.standing}${i.locked && isOpen ? ' locked' : ''}${i.isStep ? ' step' : ''}`, data: {item: i.id}},
    h('div', {class: 'item-words'},
      h('p', {class: 'item-head'}, i.isStep ? capital(i.label) : `Before ${i.label}`),
      i.check && h('p', {class: 'item-check'}, capital(i.check)), isOpen && pointer(s.place, i),
      i.locked && isOpen && h('p', {class: 'item-lock'}, `Locked: ${lockWords(s, i)}`),
      i.answers.map(said), i.standing === 'conflict' && h('p', {class: 'item-conflict'}, 'Two people said different things. What holds?')),
    may() && doings(s.place, i, isOpen));
}

/** Words for why a step waits; the checks themselves stand above it. */
function lockWords(s, i) {
  const open = i.needs.map(id => s.items.find(x => x.id === id)).filter(x => x && x.standing !== 'ticked');
  const words = x => x.id.endsWith('/recheck-before-capping') ? 'the recheck before capping' : `“Before ${x.label}”`;
  return `somebody has to look first and tick ${open.map(words).join(' and ')} under their name. It can’t be skipped.`;
}

const said = e => h('p', {class: 'item-said'}, `${capital(SAID[e.kind])} by ${e.by}, ${when(e.at)}${e.waits ? ', not sent yet' : ''}`,
  e.text && `: ${e.text}`);

function doings(place, i, isOpen) {
  const button = (text, cls, fn, disabled) => h('button', {class: cls, disabled, on: {click: fn}}, text);
  if (!isOpen) return h('div', {class: 'item-doings'}, button('Open again', 'quiet-button', () => untick(place, i)));
  return h('div', {class: 'item-doings'}, button(i.isStep ? 'Done' : 'It is so', 'big main', () => tick(place, i), i.locked),
    !i.isStep && button('Not good', 'big', () => fail(place, i)),
    i.standing === 'conflict' && button('Leave open', 'big', () => untick(place, i)),
    !i.isStep && button('Done otherwise', 'quiet-button', () => deviate(place, i)));
}
