// The desk: the book with the open tab on one side, the drawing and the slip of the chosen junction on the other.

import {h, put} from './dom.js';
import {set, state, watch} from './state.js';
import {mountTable} from './table.js';
import {mountPlan} from './plan.js';
import {mountSlip} from './slip.js';
import {mountFindings} from './findings.js';
import {mountOrder} from './order.js';
import {mountRevisions} from './revisions.js';
import {mountEstimates} from './estimates.js';
import {mountNotes} from './notes.js';
import {legend, swatch} from './legend.js';
import {TABS} from './frame.js';
import {kindText} from './marks.js';
import {kindOf} from './ledger.js';
import {length} from './units.js';

const BOOKS = {ledger: mountTable, findings: mountFindings, order: mountOrder, estimates: mountEstimates, revisions: mountRevisions, notes: mountNotes};
const VIEWS = [['plan', 'Plan'], ['both', 'Both'], ['3d', '3-D']];

let parts = null;
watch(['tab'], () => parts && state.ledger && showBook());
watch(['view'], () => parts && state.ledger && showView());
watch(['pane', 'tab', 'selected', 'face', 'ledger', 'units'], () => parts && state.ledger && showPane());

export function mountDesk(desk) {
  parts = {books: {}, book: h('section', {id: 'book', class: 'book', tabindex: -1, 'aria-label': 'Ledger'})};
  parts.switch = h('div', {class: 'view-switch', role: 'group', 'aria-label': 'Drawing'});
  parts.plan = h('div', {class: 'drawing plan'});
  parts.roof = h('div', {class: 'drawing roof'});
  parts.slip = h('section', {class: 'slip', 'aria-label': 'The junction', tabindex: 0});
  parts.desk = desk;
  parts.panes = h('nav', {class: 'panes', 'aria-label': 'What the screen shows'});
  put(desk, parts.book, h('section', {class: 'board', 'aria-label': 'The roof'},
    h('div', {class: 'board-head'}, parts.switch, legend()),
    h('div', {class: 'drawings'}, parts.plan, parts.roof)), parts.slip, parts.panes);
  mountPlan(parts.plan);
  mountSlip(parts.slip);
  showBook();
  showView();
  showPane();
}

/** Where the screen has no room for all at once, three buttons at its foot choose; the style sheet says when. */
function showPane() {
  const j = state.ledger.byId.get(state.selected);
  parts.desk.dataset.pane = state.pane;
  const buttons = [['roof', 'Roof'], ['book', TABS.find(([id]) => id === state.tab)?.[1] ?? 'Ledger'],
    ['slip', j ? [swatch(j.seal), ' ', kindText(kindOf(j, state.reviews)), ' ', length(j.lengthM)] : state.face ? `Face ${state.face}` : 'Junction']];
  put(parts.panes, buttons.map(([id, text]) => h('button', {'aria-pressed': String(state.pane === id), on: {click: () => set({pane: id})}}, text)));
}

/** After what is needed first: the 3-D library and its first picture take the longest of all. */
const whenIdle = fn => 'requestIdleCallback' in window ? requestIdleCallback(fn, {timeout: 3000}) : setTimeout(fn, 300);

function showBook() {
  const tab = BOOKS[state.tab] ? state.tab : 'ledger';
  if (!parts.books[tab]) {
    parts.books[tab] = h('div', {class: 'page at-' + tab});
    BOOKS[tab](parts.books[tab]);
  }
  put(parts.book, parts.books[tab]);
  parts.books[tab].dispatchEvent(new Event('shown'));
}

function showView() {
  put(parts.switch, VIEWS.map(([id, text]) => h('button', {'aria-pressed': String(state.view === id), on: {click: () => set({view: id})}}, text)));
  parts.plan.hidden = state.view === '3d';
  parts.roof.hidden = state.view === 'plan';
  if (state.view !== 'plan' && !parts.has3d) {
    parts.has3d = true;
    put(parts.roof, h('p', {class: 'loading'}, 'Raising the roof…'));
    const root = parts.roof;
    whenIdle(() => import('./roof3d.js').then(m => m.mountRoof(root)).catch(() => put(root,
      h('p', {class: 'empty'}, 'This browser draws no 3-D here (WebGL is off). The plan shows the same junctions, and picking works there too.'))));
  }
  dispatchEvent(new Event('resize'));
}
