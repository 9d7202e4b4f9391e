// Head and foot of the page: what is open, the switches, how far the review is, the cautions.

import {h, put, choice} from './dom.js';
import {set, state, watch, remember} from './state.js';
import {count} from './units.js';
import {checkedIn, sentence} from './revisions.js';
import {bars} from './coverage.js';
import {staleLink} from './decisions.js';

export const TABS = [['ledger', 'Ledger'], ['findings', 'Findings'], ['order', 'Order'], ['estimates', 'Estimates'], ['revisions', 'Revisions'], ['notes', 'Cautions and scope']];

export function mountHead(root, {home}) {
  const draw = () => put(root,
    h('div', {class: 'brand'}, h('button', {class: 'word', title: 'Open another model', on: {click: home}}, 'seamledger')),
    state.ledger && h('div', {class: 'sheet-title'},
      h('h1', {}, state.analysis.title),
      h('span', {class: 'revision', title: checkedIn(state.analysis)}, sentence(state.analysis.words)),
      models().length > 1 && h('span', {class: 'models', title: models().join('\n')}, models().join(' + '))),
    state.ledger && h('nav', {'aria-label': 'Parts of the ledger'}, TABS.map(([id, text]) =>
      h('button', {class: 'tab', 'aria-current': state.tab === id ? 'page' : null, on: {click: () => set({tab: id, pane: 'book'})}}, text,
        id === 'findings' && openFindings() > 0 && h('span', {class: 'number'}, count(openFindings()))))),
    h('div', {class: 'switches'},
      choice([['metric', 'Metric'], ['us', 'US units']], state.units, v => { remember('units', v); set({units: v}); }, {'aria-label': 'Units'}),
      choice([['auto', 'As the system'], ['light', 'Light'], ['dark', 'Dark']], state.theme, v => { remember('theme', v); set({theme: v}); }, {'aria-label': 'Light or dark'})));
  watch(['ledger', 'tab', 'units', 'theme', 'marks', 'analysis'], draw);
  draw();
}

const models = () => (state.ledger.raw.models ?? []).map(m => m.file);

const openFindings = () => state.ledger.findings.filter(f => state.marks.get(f.place)?.state !== 'accepted').length;

export function mountFoot(root) {
  const draw = () => {
    if (!state.ledger) return put(root, caution());
    put(root,
      h('div', {class: 'coverage'}, bars(), staleLink(), state.news && h('span', {class: 'hand', role: 'status'}, state.news)),
      caution());
  };
  watch(['ledger', 'reviews', 'marks', 'units', 'news'], draw);
  draw();
}

const caution = () => h('p', {class: 'caution'},
  h('span', {}, 'An estimate from the model’s geometry and stated assumptions. '), h('span', {class: 'long'}, 'Local code, the panel system’s tested assembly and the licensed designer decide; verify on site. '),
  state.ledger && h('button', {class: 'link', on: {click: () => set({tab: 'notes', pane: 'book'})}}, 'Before anyone goes on the roof…'));
