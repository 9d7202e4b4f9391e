// All places, what is open first, and the way to one by its tag.

import {h, put} from '../dom.js';
import {nameOf, partOf} from './names.js';
import {standings} from './roof.js';
import {finder} from './scan.js';
import {STAGE, length} from './words.js';

const ORDER = ['conflict', 'failed', 'recheck', 'begun', 'open', 'checked', 'signed'];

/** @param {(place: object) => void} go */
export function showList(root, go) {
  const all = standings().filter(s => s.items.length || s.events.length)
    .sort((a, b) => ORDER.indexOf(a.stage) - ORDER.indexOf(b.stage) || (b.place.lengthM ?? 0) - (a.place.lengthM ?? 0));
  put(root, finder(go), h('ul', {class: 'places'}, all.map(s => h('li', {},
    h('button', {class: `place-row ${s.stage}`, on: {click: () => go(s.place)}},
    h('span', {class: 'sign', 'aria-hidden': 'true'}, STAGE[s.stage].sign),
    h('span', {}, h('b', {}, nameOf(s.place.id)), ' ', h('small', {}, `${partOf(s.place.id)} ${s.place.id}`), h('br'),
      h('small', {}, STAGE[s.stage].text, s.place.lengthM > 0 && `, ${length(s.place.lengthM)}`, `, ${left(s)}`)))))));
}

const left = s => {
  const n = s.items.filter(i => !i.isStep && !['ticked', 'deviates'].includes(i.standing)).length;
  return n ? `${n} open` : 'nothing open';
};
