// Begins: reads the address, opens the analysis or the start page, puts the views in their places.

import {h, put, say} from './dom.js';
import {readAddress, remembered, set, state, tell, watch} from './state.js';
import {onNavigate} from './navigate.js';
import {resultState, watchOthers} from './actions/overrides.js';
import {mountDesk} from './desk/desk.js';
import {mountFoot, mountHead} from './desk/frame.js';
import {mountHealth} from './desk/health.js';
import {mountProblem} from './desk/problem.js';
import {showStart} from './start/page.js';
import {showProgress, showTokenForm} from './start/waiting.js';
import * as api from './api.js';

const desk = document.getElementById('desk');

/** Opens an analysis: its result where there is one, its progress where it goes on. */
async function open(id) {
  set({problem: null, site: null, changes: null, effect: null, overrideChanges: null, overriding: '', news: ''});
  const analysis = await api.analysis(id);
  if (analysis.state === 'queued' || analysis.state === 'running') {
    set({analysis, ledger: null});
    showProgress(desk, analysis);
  } else if (analysis.state === 'done') {
    await openDone(analysis);
  } else {
    set({analysis: null, ledger: null});
    await showStart(desk, {title: `${analysis.title} was not analysed`, detail: analysis.problem?.detail ?? 'It was cancelled.'});
  }
}

async function openDone(analysis) {
  put(desk, h('p', {class: 'loading'}, `Opening the ledger of ${analysis.title}…`));
  const [raw, said] = await Promise.all([api.outline(analysis.id), api.reviews(analysis.id)]);
  const result = resultState(raw, said), {ledger} = result;
  set({analysis, ...result, selected: ledger.byId.has(state.selected) || ledger.nodes.has(state.selected) ? state.selected : ''});
  document.title = `${analysis.title} · seamledger`;
  mountDesk(desk);
  say(`${ledger.junctions.length} junctions of ${analysis.title}`);
  history.replaceState(null, '', location.search || '?analysis=' + analysis.id);
}

async function home() {
  history.pushState(null, '', '/');
  set({problem: null, analysis: null, ledger: null, selected: '', face: '', filters: {}, tab: 'ledger'});
  document.title = 'seamledger';
  await showStart(desk).catch(trouble);
}

async function trouble(e) {
  if (e.status === 401) return showTokenForm(desk, () => location.reload());
  if (e.status === 404) {
    set({analysis: null, ledger: null});
    return showStart(desk, {title: 'That analysis is not here', detail: 'It was removed, or the address is not whole. '
      + 'Open another one below, or begin a new one.'});
  }
  put(desk, h('section', {class: 'trouble', role: 'alert'}, h('h1', {}, 'The page cannot go on'), h('p', {}, e.message),
    h('p', {}, h('button', {on: {click: () => location.reload()}}, 'Try again'))));
}

async function begin() {
  const {patch, analysis} = readAddress();
  const columns = (remembered('columns') ?? '').split(' ').filter(Boolean);
  set({...patch, theme: remembered('theme') ?? 'auto', columns: columns.length ? columns : null});
  onNavigate({open, home});
  const showTheme = () => { document.documentElement.dataset.theme = state.theme; };
  showTheme();
  watch(['theme'], showTheme);
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => tell('theme'));
  mountHead(document.getElementById('head'));
  mountFoot(document.getElementById('foot'));
  mountHealth(document.getElementById('health'));
  mountProblem(document.getElementById('problem'));
  watchOthers();
  try {
    const start = await api.start();
    const id = analysis ?? start.analysis;
    if (!id) return await showStart(desk);
    if (!analysis) history.replaceState(null, '', '?analysis=' + id);
    await open(id);
  } catch (e) {
    await trouble(e);
  }
}

begin();
