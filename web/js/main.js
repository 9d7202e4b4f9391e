// Begins: reads the address, opens the analysis or the start page, puts the views in their places.

import {h, put, say} from './dom.js';
import {set, state, watch, readAddress, remembered} from './state.js';
import * as api from './api.js';
import {index} from './ledger.js';
import {mountHead, mountFoot} from './frame.js';
import {mountDesk} from './desk.js';
import {mountHealth} from './health.js';
import {showStart, showProgress, showTokenForm} from './start.js';

const desk = document.getElementById('desk');

/** Opens an analysis: its result where there is one, its progress where it goes on. */
export async function open(id) {
  set({problem: null, changes: null, effect: null, handChanges: null, deciding: '', news: ''});
  const analysis = await api.analysis(id);
  if (analysis.state === 'queued' || analysis.state === 'running') {
    set({analysis, ledger: null});
    showProgress(desk, analysis, open);
  } else if (analysis.state === 'done') {
    await openDone(analysis);
  } else {
    set({analysis: null, ledger: null});
    await showStart(desk, open, {title: `${analysis.title} was not analysed`, detail: analysis.problem?.detail ?? 'It was cancelled.'});
  }
}

async function openDone(analysis) {
  put(desk, h('p', {class: 'loading'}, `Opening the ledger of ${analysis.title}…`));
  const [raw, said] = await Promise.all([api.outline(analysis.id), api.reviews(analysis.id)]);
  const ledger = index(raw);
  set({
    analysis, ledger,
    reviews: new Map(said.reviews.map(r => [r.junction, r])),
    marks: new Map(said.findings.map(m => [m.place, m])),
    selected: ledger.byId.has(state.selected) ? state.selected : '',
  });
  document.title = `${analysis.title} · seamledger`;
  mountDesk(desk);
  say(`${ledger.junctions.length} junctions of ${analysis.title}`);
  history.replaceState(null, '', location.search || '?analysis=' + analysis.id);
}

async function begin() {
  const {patch, analysis} = readAddress();
  set(patch);
  applyTheme(remembered('theme') ?? 'auto');
  mountHead(document.getElementById('head'), {open, home});
  mountFoot(document.getElementById('foot'));
  mountHealth(document.getElementById('health'));
  try {
    const start = await api.start();
    const id = analysis ?? start.analysis;
    if (id) {
      if (!analysis) history.replaceState(null, '', '?analysis=' + id);
      await open(id);
    } else {
      await showStart(desk, open);
    }
  } catch (e) {
    await trouble(e);
  }
}

async function home() {
  history.pushState(null, '', '/');
  set({analysis: null, ledger: null, selected: '', filters: {}, tab: 'ledger'});
  document.title = 'seamledger';
  await showStart(desk, open).catch(trouble);
}

async function trouble(e) {
  if (e.status === 401) return showTokenForm(desk, () => location.reload());
  if (e.status === 404) {
    set({analysis: null, ledger: null});
    return showStart(desk, open, {title: 'That analysis is not here', detail: 'It was removed, or the address is not whole. Open another one below, or begin a new one.'});
  }
  put(desk, h('section', {class: 'trouble', role: 'alert'},
    h('h1', {}, 'The page cannot go on'), h('p', {}, e.message), h('p', {}, h('button', {on: {click: () => location.reload()}}, 'Try again'))));
}

export function applyTheme(theme) {
  set({theme});
  document.documentElement.dataset.theme = theme;
}

addEventListener('unhandledrejection', e => set({problem: e.reason?.message ?? String(e.reason)}));
watch(['theme'], () => { document.documentElement.dataset.theme = state.theme; });
begin();
