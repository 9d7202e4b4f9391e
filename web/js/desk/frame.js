// Head and foot of the page: what is open, the switches, how far the review is, the cautions.

import {choice, h, link, put} from '../dom.js';
import {remember, set, state, watch} from '../state.js';
import {home} from '../navigate.js';
import {bars} from '../parts/bars.js';
import {checkedIn} from '../parts/dates.js';
import {staleLink} from '../parts/differences.js';
import {capital, count} from '../units.js';
import {TABS} from './tabs.js';

const UNITS = [['metric', 'Metric'], ['us', 'US units']];
const THEMES = [['auto', 'Auto'], ['light', 'Light'], ['dark', 'Dark']];

export function mountHead(root) {
  const draw = () => put(root,
    h('div', {class: 'brand'}, h('button', {class: 'word', title: 'Open another model', on: {click: home}}, 'seamledger')),
    state.ledger && [title(), tabs()],
    h('div', {class: 'switches'}, preference('units', UNITS, 'Units'), preference('theme', THEMES, 'Light or dark')));
  watch(['ledger', 'tab', 'units', 'theme', 'marks', 'analysis'], draw);
  draw();
}

function preference(name, options, label) {
  const change = v => {
    remember(name, v);
    set({[name]: v});
  };
  return choice(options, state[name], change, {'aria-label': label});
}

function title() {
  const models = (state.ledger.raw.models ?? []).map(m => m.file);
  return h('div', {class: 'sheet-title'},
    h('h1', {title: `${state.analysis.title}, ${state.analysis.words}`}, state.analysis.title),
    h('span', {class: 'revision', title: checkedIn(state.analysis)}, capital(state.analysis.words)),
    models.length > 1 && h('span', {class: 'models', title: models.join('\n')}, h('span', {class: 'whole'}, models.join(' + ')),
      h('span', {class: 'short'}, `${models.length} models`)));
}

function tabs() {
  const open = state.ledger.findings.filter(f => state.marks.get(f.place)?.state !== 'accepted').length;
  return h('nav', {'aria-label': 'Parts of the ledger'}, TABS.map(([id, text]) =>
    h('button', {class: 'tab', 'aria-current': state.tab === id ? 'page' : null, on: {click: () => set({tab: id, pane: 'book'})}}, text,
      id === 'findings' && open > 0 && h('span', {class: 'number'}, count(open)))));
}

export function mountFoot(root) {
  const draw = () => put(root, state.ledger && h('div', {class: 'coverage'}, bars(), staleLink(),
    state.news && h('span', {class: 'overridden', role: 'status'}, state.news)), caution());
  watch(['ledger', 'reviews', 'marks', 'units', 'news'], draw);
  draw();
}

const caution = () => h('p', {class: 'caution'},
  h('span', {}, 'An estimate from the model’s geometry and stated assumptions. '), h('span', {class: 'long'},
    'Local code, the panel system’s tested assembly and the licensed designer decide; verify on site. '),
  state.ledger && link('Before anyone goes on the roof…', () => set({tab: 'notes', pane: 'book'})));
