// Findings by severity and code: what is wrong, what to do, and what users decided about it.

import {h, link, put} from '../dom.js';
import {set, state, watch} from '../state.js';
import {SEVERITY, kindText} from '../ledger/marks.js';
import {junctionsOf, kindOf} from '../ledger/result.js';
import {markOf, remarks} from '../parts/remarks.js';
import {handedOn, topicsBack} from './handover.js';
import {placeButton, placingForm} from './placing.js';
import * as api from '../api.js';
import * as u from '../units.js';

const AT_FIRST = 60;
const MOST_LINES = 12;
const unfolded = new Set();
let openOnly = false;

export function mountFindings(root) {
  const draw = () => state.ledger && root.isConnected && put(root, content(draw));
  watch(['ledger', 'marks', 'units'], () => {
    const isWriting = root.contains(document.activeElement) && document.activeElement.matches('textarea, input:not([type="checkbox"])');
    if (!isWriting) draw();
  });
  root.addEventListener('shown', draw);
}

/** Kept while the view is drawn anew: what it says of a file that came back stays to be read. */
let back = null;
let backOf = '';

function topics() {
  if (backOf !== state.analysis.id) {
    back = topicsBack();
    backOf = state.analysis.id;
  }
  return back;
}

const isAccepted = f => markOf(f).state === 'accepted';

function content(draw) {
  const all = state.ledger.findings;
  if (!all.length) return [placingForm(), nothing(), handedOn()];
  const shown = all.filter(f => !openOnly || !isAccepted(f));
  const box = h('input', {type: 'checkbox', id: 'open-only', on: {change: () => {
    openOnly = box.checked;
    draw();
  }}});
  box.checked = openOnly;
  const accepted = all.filter(isAccepted).length;
  return [h('h2', {}, `Findings: ${u.count(all.length - accepted)} open of ${u.count(all.length)}`),
    h('p', {}, box, ' ', h('label', {for: 'open-only'}, 'Open ones only')), accepted > 0 && acceptedFile(), handedOn(), topics(),
    Object.keys(SEVERITY).map(sev => severity(sev, shown.filter(f => f.severity === sev), draw)),
    placingForm()];
}

const acceptedFile = () => h('p', {},
  h('a', {href: api.decisionsAt(state.analysis.id), download: 'decisions.json'}, 'What is accepted, as a file'), ' for ',
  h('code', {}, 'seamledger analyze MODEL --decisions decisions.json'));

const nothing = () => h('div', {class: 'empty'}, h('h2', {}, 'No findings'), h('p', {}, 'Nothing in this model required a decision. '
  + 'That is no proof that the roof is right: look at the long lines and the walls all the same.'));

function severity(sev, list, draw) {
  if (!list.length) return null;
  const codes = new Map();
  for (const f of [...list].sort((a, b) => (b.risk ?? 0) - (a.risk ?? 0))) codes.set(f.code, [...codes.get(f.code) ?? [], f]);
  const {sign, text} = SEVERITY[sev];
  return h('section', {class: 'severity ' + sev}, h('h3', {}, `${sign} ${text}${list.length > 1 ? 's' : ''} (${u.count(list.length)})`),
    [...codes].map(([code, members]) => group(code, members, draw)));
}

function group(code, members, draw) {
  const list = unfolded.has(code) ? members : members.slice(0, AT_FIRST), advice = members[0].action ?? members[0].advice;
  const show = () => set({filters: {finding: code}, tab: 'ledger', pane: 'book'});
  const unfold = () => {
    unfolded.add(code);
    draw();
  };
  return h('section', {class: 'code-group'},
    h('h4', {}, h('code', {}, code), ` ${u.count(members.length)}`,
      members.some(f => f.junction) && [' ', link('Show in the ledger', show)]),
    advice && h('p', {class: 'advice'}, members[0].who && h('strong', {}, `${u.capital(members[0].who)}: `), advice,
      members[0].reason && h('small', {}, ` ${members[0].reason}`)),
    h('ul', {class: 'notes'}, list.map(f =>
      h('li', {class: f.severity + (isAccepted(f) ? ' accepted' : '')}, line(f), placeButton(f), remarks(f)))),
    list.length < members.length && h('p', {}, h('button', {on: {click: unfold}}, `Show all ${u.count(members.length)}`)));
}

function line(f) {
  const lines = junctionsOf(f).map(id => state.ledger.byId.get(id)).filter(Boolean);
  return [u.capital(f.message), f.risk > 0 && h('small', {title: 'How much a leak is to be feared there, of 100'}, ` risk ${f.risk}`), ' ',
    lines.slice(0, MOST_LINES).map(j =>
      [link(`${kindText(kindOf(j))}, ${u.length(j.lengthM)}`, () => set({selected: j.id, pane: 'detail'})), ' ']),
    lines.length > MOST_LINES && h('small', {}, `and ${u.count(lines.length - MOST_LINES)} more`),
    !lines.length && (f.elements ?? []).slice(0, 3).map(e =>
      [' ', h('small', {}, state.ledger.elements.get(e)?.name ?? '', ' ', h('code', {}, e))])];
}
