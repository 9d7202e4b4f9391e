// The section through the chosen junction, from the program's own drawing of it.

import {h, put} from '../dom.js';
import {state} from '../state.js';
import {fetchSheet, noSheet, openSheet, shortSection} from '../parts/sheet.js';
import * as api from '../api.js';

export function section(j) {
  // A result that follows another override has other drawings at the same address.
  const url = `${api.sectionAt(state.analysis.id, j.id)}?result=${(state.analysis.ledgerSha256 ?? '').slice(0, 12)}&units=${state.units}`;
  const root = h('div', {class: 'section-figure'}, h('p', {class: 'quiet'}, 'Drawing the section…'));
  fetchSheet(state.ledger, url).then(text => put(root, figure(`Section at ${j.id}`, url, text))).catch(e => noSheet(root, e));
  return h('section', {'aria-label': 'Section across the line'}, root);
}

/** What a part is; how much of it stands in the tables below, all of it on the whole sheet. */
const short = words => words.split(/[:;]| \(|, (?:counted|primary|secondary|screwed|\d+ lines?)/)[0];

function figure(title, url, text) {
  const host = h('div', {class: 'drawing-section', role: 'img', 'aria-label': `${title}; the list below it names its parts`});
  const words = shortSection(host, text), enlarge = () => openSheet(title, url, text);
  // For a pointer alone: keys have the button.
  host.addEventListener('click', enlarge);
  const key = h('ol', {class: 'section-key'}, words.map(w => h('li', {title: w}, short(w))));
  return [h('div', {class: 'figure-pair'}, host, words.length > 0 && key),
    h('p', {class: 'doings'}, h('button', {on: {click: enlarge}}, 'Enlarge'), ' ',
      h('a', {href: url, target: '_blank', rel: 'noopener'}, 'The sheet to print, to scale'))];
}
