// The details that there are for a junction: those that fit it first, each with a small section.

import {h, put} from '../dom.js';
import {state} from '../state.js';
import {detailOptions} from '../ledger/result.js';
import {inWords} from '../parts/factwords.js';
import {fetchSheet, tinySection} from '../parts/sheet.js';
import * as api from '../api/rules.js';
import {capital} from '../units.js';

const MOST_SECTIONS = 8;

/**
 * A list of all details in groups by how they fit, and pictures of those that are for the junction's kind.
 * @param {import('../types.js').Junction} j
 * @param {string} current detail that was chosen before, or empty
 * @param {() => string} kind that the junction is taken for, or empty for its own
 */
export function detailChoice(j, current, kind) {
  const select = h('select', {on: {change: () => mark()}}), gallery = h('div', {class: 'detail-gallery'});
  const byRules = ['', 'As the rules say, for the kind above'];
  const option = ([value, text]) => h('option', {value, selected: value === current}, text);
  put(select, [byRules, ...detailOptions(state.ledger)].map(option));
  const mark = () => gallery.querySelectorAll('button').forEach(b =>
    b.setAttribute('aria-pressed', String(b.dataset.detail === select.value)));
  let asked = null;
  async function load() {
    if (asked === kind()) return;
    const mine = asked = kind();
    put(gallery, h('p', {class: 'quiet'}, 'Looking for what fits…'));
    try {
      const all = await api.detailsFor(state.analysis.id, j.id, mine);
      if (mine !== asked) return;
      const chosen = select.value;
      put(select, option(byRules), groups(all), option(['none', 'None: not part of this job']));
      select.value = chosen;
      put(gallery, cards(all.filter(o => o.fits || o.ofKind), j, id => { select.value = select.value === id ? '' : id; mark(); }));
      mark();
    } catch (e) {
      asked = null;
      put(gallery, h('p', {class: 'quiet'}, e.message));
    }
  }
  return {select, gallery, load};
}

/** The list in three parts. */
function groups(all) {
  const parts = [['Fits this line', all.filter(o => o.fits)],
    ['For this kind of line, but misses something', all.filter(o => !o.fits && o.ofKind)],
    ['For other kinds of lines', all.filter(o => !o.fits && !o.ofKind)]];
  return parts.filter(([, list]) => list.length).map(([label, list]) =>
    h('optgroup', {label}, list.map(o => h('option', {value: o.id}, o.title))));
}

function cards(list, j, choose) {
  if (!list.length) return h('p', {class: 'quiet'}, 'No detail is meant for such a line.');
  return h('ul', {class: 'detail-cards', 'aria-label': 'Details for this kind of line'},
    list.slice(0, MOST_SECTIONS).map(o => h('li', {}, card(o, j, choose))));
}

function card(o, j, choose) {
  const host = h('span', {class: 'tiny-section', 'aria-hidden': 'true'});
  fetchSheet(state.ledger, `${api.sectionWith(state.analysis.id, j.id, o.id)}&result=${(state.analysis.ledgerSha256 ?? '').slice(0, 12)}`)
    .then(text => tinySection(host, text)).catch(() => put(host, 'no drawing'));
  return h('button', {type: 'button', class: 'detail-card', 'aria-pressed': 'false', data: {detail: o.id}, on: {click: () => choose(o.id)}},
    host, h('b', {}, capital(o.title.split(/[:;(]/)[0].trim())),
    h('small', {}, o.fits ? 'fits this line' : inWords(o.misses.join('; '))));
}
