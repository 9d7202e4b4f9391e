// The whole roof: weather, lots and notes of the day, what was refused, the record to take away, who holds the telephone.

import {h, put} from '../dom.js';
import {lot, note, rename, weather} from './events.js';
import {nameOf} from './names.js';
import {camera, gallery} from './photos.js';
import {dismiss} from './queue.js';
import {covered, failed, open} from './roof.js';
import * as service from './service.js';
import {SAID, run, when} from './words.js';

/** @param {() => void} turnTheme to dark or light */
export function showRecord(root, turnTheme) {
  const c = covered(), name = h('input', {type: 'text', id: 'who', value: open.name, on: {change: () => rename(name.value.trim())}});
  const mine = open.own.filter(e => !e.event.place && e.state !== 'refused').map(e => ({...e.event, blob: e.photo}));
  const day = [...(open.record?.elsewhere ?? []), ...mine.filter(e => !open.record?.elsewhere.some(x => x.id === e.id))];
  put(root, h('article', {class: 'place'}, h('h1', {}, 'The whole roof'),
    h('p', {}, `${run(c.checkedM)} of ${run(c.lengthM)} looked at, ${run(c.signedM)} signed off. ${c.open} hold points are open.`),
    h('div', {class: 'ask-field'}, h('label', {for: 'who'}, 'Your name in the record'), name),
    refused(),
    open.roof.scope !== 'view' && h('div', {class: 'more'}, h('button', {class: 'big', on: {click: weather}}, 'Weather'),
      h('button', {class: 'big', on: {click: () => lot(null)}}, 'Sealant lot'), 
      h('button', {class: 'big', on: {click: () => note(null)}}, 'Note'), camera(null)),
    h('div', {class: 'more'}, download('record.pdf', 'Record (PDF)'), download('record.json', 'Record (JSON)'),
      h('button', {class: 'big', on: {click: turnTheme}}, document.documentElement.dataset.theme === 'dark' ? 'Light' : 'Dark')),
    gallery(day), h('ul', {class: 'history'}, [...day].reverse()
      .map(e => h('li', {}, `${when(e.at)}, ${e.by}: ${SAID[e.kind]}`, e.text && `. ${e.text}`))),
    h('p', {class: 'quiet'}, 'Roof edges and skylights are fall hazards: tie off as the fall protection plan says, before this telephone '
      + 'comes out of the pocket. A tick is no inspection by the designer or the maker.')));
}

/** What the service would not take: nothing of it is lost unseen. */
function refused() {
  const all = open.own.filter(e => e.state === 'refused');
  return all.length > 0 && h('section', {class: 'refused'}, h('h2', {}, 'Not taken'), h('ul', {}, all.map(e => h('li', {},
    h('p', {}, `${e.event.place ? nameOf(e.event.place) + ' ' : ''}${SAID[e.event.kind]} by ${e.event.by}, ${when(e.event.at)}: ${e.why}`,
      e.event.text && ` (${e.event.text})`),
    h('button', {class: 'big', on: {click: () => dismiss(e)}}, 'I have seen it')))));
}

function download(name, words) {
  return h('button', {class: 'big', on: {click: async () => {
    try {
      const url = URL.createObjectURL(await service.file(open.roof, open.roof.analysis, name));
      h('a', {href: url, download: name}).click();
    } catch (e) {
      failed(e);
      alert(e.message);
    }
  }}}, words);
}
