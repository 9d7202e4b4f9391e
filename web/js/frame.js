// Head and foot of the page: what is open, the switches, how far the review is, the cautions.

import {h, put, choice} from './dom.js';
import {set, state, watch, remember} from './state.js';
import {percent, run, count} from './units.js';
import {reviewOf} from './ledger.js';
import {staleLink} from './decisions.js';

export const TABS = [['ledger', 'Ledger'], ['findings', 'Findings'], ['order', 'Order'], ['estimates', 'Estimates'], ['revisions', 'Revisions'], ['notes', 'Cautions and scope']];

export function mountHead(root, {home}) {
  const draw = () => put(root,
    h('div', {class: 'brand'}, h('button', {class: 'word', title: 'Open another model', on: {click: home}}, 'seamledger')),
    state.ledger && h('div', {class: 'sheet-title'},
      h('h1', {}, state.analysis.title),
      h('span', {}, `Revision ${state.analysis.revision}`),
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

/** Length that was reviewed, of all length; and the same for what still has open findings. */
export function coverage() {
  const c = {checked: 0, question: 0, recheck: 0, open: 0, withFindings: 0, byHand: 0};
  for (const j of state.ledger.junctions) {
    c[reviewOf(j, state.reviews)] += j.lengthM;
    if (j.found.some(f => state.marks.get(f.place)?.state !== 'accepted')) c.withFindings += j.lengthM;
    if (j.decided) c.byHand += j.lengthM;
  }
  return c;
}

export function mountFoot(root) {
  const draw = () => {
    if (!state.ledger) return put(root, caution());
    const c = coverage(), total = state.ledger.totalM || 1;
    const part = (name, text) => c[name] > 0 && h('span', {class: 'part ' + name, style: {width: 100 * c[name] / total + '%'}, title: `${text}: ${run(c[name])}`});
    put(root,
      h('div', {class: 'coverage'},
        h('span', {}, `Checked ${percent(c.checked / total)} of ${run(state.ledger.totalM)}`),
        h('div', {class: 'bar', role: 'img', 'aria-label': `Checked ${percent(c.checked / total)}, questions ${percent(c.question / total)}, to check again ${percent(c.recheck / total)} of all length`},
          part('checked', 'Checked'), part('question', 'Questions'), part('recheck', 'To check again')),
        h('span', {}, `With open findings ${run(c.withFindings)}`),
        c.byHand > 0 && h('span', {}, `Decided by hand ${run(c.byHand)}`),
        staleLink(), state.news && h('span', {class: 'hand', role: 'status'}, state.news)),
      caution());
  };
  watch(['ledger', 'reviews', 'marks', 'units', 'news'], draw);
  draw();
}

const caution = () => h('p', {class: 'caution'},
  h('span', {}, 'An estimate from the model’s geometry and stated assumptions. '), h('span', {class: 'long'}, 'Local code, the panel system’s tested assembly and the licensed designer decide; verify on site. '),
  state.ledger && h('button', {class: 'link', on: {click: () => set({tab: 'notes', pane: 'book'})}}, 'Before anyone goes on the roof…'));
