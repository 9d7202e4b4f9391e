// The desk: the book with the open tab on one side, the drawing and the detail panel of the chosen junction on the other.

import {h, put} from '../dom.js';
import {set, state, watch} from '../state.js';
import {kindText} from '../ledger/marks.js';
import {kindOf} from '../ledger/result.js';
import {legend, swatch} from '../parts/legend.js';
import {mountPlan} from '../plan/plan.js';
import {mountTable} from '../table/table.js';
import {mountDetailPanel} from '../detail/panel.js';
import {mountEstimates} from '../views/estimates.js';
import {mountFindings} from '../views/findings.js';
import {mountNodes} from '../views/nodes.js';
import {mountNotes} from '../views/notes.js';
import {mountOrder} from '../views/order.js';
import {mountRevisions} from '../views/revisions.js';
import {mountRules} from '../views/rules.js';
import {mountSequence} from '../views/sequence.js';
import {mountSite} from '../views/site.js';
import {length} from '../units.js';
import {TABS} from './tabs.js';

const BOOKS = {ledger: mountTable, findings: mountFindings, order: mountOrder, estimates: mountEstimates, revisions: mountRevisions,
  rules: mountRules, notes: mountNotes, nodes: mountNodes, site: mountSite, sequence: mountSequence};
const VIEWS = [['plan', 'Plan'], ['both', 'Both'], ['3d', '3-D']];

let parts = null;
watch(['tab'], () => parts && state.ledger && showBook());
watch(['view'], () => parts && state.ledger && showView());
watch(['pane', 'tab', 'selected', 'face', 'ledger', 'units'], () => parts && state.ledger && showPane());
addEventListener('keydown', e => e.key === 'Escape' && parts && state.ledger && close(e));

export function mountDesk(desk) {
  parts = {
    desk, books: {},
    book: h('section', {id: 'book', class: 'book', tabindex: -1, 'aria-label': 'Ledger'}),
    switch: h('div', {class: 'view-switch', role: 'group', 'aria-label': 'Drawing'}),
    plan: h('div', {class: 'drawing plan'}),
    roof: h('div', {class: 'drawing roof'}),
    detail: h('section', {class: 'detail-panel', 'aria-label': 'The junction', tabindex: 0}),
    panes: h('nav', {class: 'panes', 'aria-label': 'What the screen shows'}),
  };
  put(desk, parts.book, h('section', {class: 'board', 'aria-label': 'The roof'},
    h('div', {class: 'board-head'}, parts.switch, legend()),
    h('div', {class: 'drawings-room'}, h('div', {class: 'drawings'}, parts.plan, parts.roof))), parts.detail, parts.panes);
  mountPlan(parts.plan);
  mountDetailPanel(parts.detail);
  showBook();
  showView();
  showPane();
}

/** Escape closes what is chosen, and gives the keyboard back to the page of the book; what is being written stays. */
function close(e) {
  const isElsewhere = e.defaultPrevented || document.querySelector('dialog[open]') || e.target.matches?.('textarea, input, select');
  if (isElsewhere || !(state.selected || state.face || state.places)) return;
  const hadFocus = parts.detail.contains(document.activeElement);
  set({selected: '', face: '', places: null, pane: 'book'});
  if (hadFocus) (parts.book.querySelector('.rows') ?? parts.book).focus();
}

/** Where the screen has no room for all at once, three buttons at its foot choose; the style sheet says when. */
function showPane() {
  const j = state.ledger.byId.get(state.selected);
  parts.desk.dataset.pane = state.pane;
  parts.desk.dataset.chosen = String(Boolean(state.selected || state.face));
  const node = state.ledger.nodes.get(state.selected);
  const chosen = node ? state.ledger.nodeKinds.get(node.kind)?.label ?? node.kind
    : j ? [swatch(j.seal), ' ', kindText(kindOf(j)), ' ', length(j.lengthM)] : state.face ? `Face ${state.face}` : 'Junction';
  const buttons = [['roof', 'Roof'], ['book', TABS.find(([id]) => id === state.tab)?.[1] ?? 'Ledger'], ['detail', chosen]];
  put(parts.panes, buttons.map(([id, text]) =>
    h('button', {'aria-pressed': String(state.pane === id), on: {click: () => set({pane: id})}}, text)));
}

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
  put(parts.switch, VIEWS.map(([id, text]) =>
    h('button', {'aria-pressed': String(state.view === id), on: {click: () => set({view: id})}}, text)));
  parts.plan.hidden = state.view === '3d';
  parts.roof.hidden = state.view === 'plan';
  if (state.view !== 'plan' && !parts.has3d) {
    parts.has3d = true;
    raiseRoof(parts.roof);
  }
  dispatchEvent(new Event('resize'));
}

/** After what is needed first: the 3-D library and its first picture take the longest of all. */
const whenIdle = fn => 'requestIdleCallback' in window ? requestIdleCallback(fn, {timeout: 3000}) : setTimeout(fn, 300);

function raiseRoof(root) {
  put(root, h('p', {class: 'loading'}, 'Raising the roof…'));
  const refused = () => put(root, h('p', {class: 'empty'}, 'This browser draws no 3-D here (WebGL is off). '
    + 'The plan shows the same junctions, and picking works there too.'));
  // Whoever left meanwhile needs no roof.
  whenIdle(() => import('../roof3d/roof.js').then(m => state.ledger && root.isConnected && m.mountRoof(root)).catch(refused));
}
