// Findings by severity and code: what is wrong, what to do, and what people decided about it.

import {h, put, field, say} from './dom.js';
import {set, state, watch, remembered, remember} from './state.js';
import {SEVERITY, kindText} from './marks.js';
import {kindOf} from './ledger.js';
import {placeButton, placingForm} from './placing.js';
import * as api from './api.js';
import * as u from './units.js';

const AT_FIRST = 60;
const unfolded = new Set();
let openOnly = false;

export function mountFindings(root) {
  const draw = () => state.ledger && root.isConnected && put(root, content());
  watch(['ledger', 'marks', 'units'], () => {
    if (root.contains(document.activeElement) && document.activeElement.matches('textarea, input:not([type="checkbox"])')) return;
    draw();
  });
  root.addEventListener('shown', draw);

  function content() {
    const all = state.ledger.findings;
    if (!all.length) return [placingForm(), h('div', {class: 'empty'}, h('h2', {}, 'No findings'), h('p', {}, 'Nothing in this model asked for a decision. That is no proof that the roof is right: look at the long lines and the walls all the same.'))];
    const shown = all.filter(f => !openOnly || mark(f).state !== 'accepted');
    const box = h('input', {type: 'checkbox', id: 'open-only', on: {change: () => { openOnly = box.checked; draw(); }}});
    box.checked = openOnly;
    return [h('h2', {}, `Findings: ${u.count(all.length - accepted(all))} open of ${u.count(all.length)}`),
      h('p', {}, box, ' ', h('label', {for: 'open-only'}, 'Open ones only')),
      accepted(all) > 0 && h('p', {}, h('a', {href: api.decisionsAt(state.analysis.id), download: 'decisions.json'}, 'What is accepted, as a file'), ' for ',
        h('code', {}, 'seamledger analyze MODEL --decisions decisions.json')),
      Object.keys(SEVERITY).map(sev => severity(sev, shown.filter(f => f.severity === sev))),
      placingForm()];
  }

  function severity(sev, list) {
    if (!list.length) return null;
    const codes = new Map();
    for (const f of list) codes.set(f.code, [...codes.get(f.code) ?? [], f]);
    return h('section', {class: 'severity ' + sev}, h('h3', {}, `${SEVERITY[sev].sign} ${SEVERITY[sev].text}${list.length > 1 ? 's' : ''} (${u.count(list.length)})`),
      [...codes].map(([code, members]) => group(code, members)));
  }

  function group(code, members) {
    const all = unfolded.has(code), list = all ? members : members.slice(0, AT_FIRST);
    const junctions = members.filter(f => f.junction);
    return h('section', {class: 'code-group'},
      h('h4', {}, h('code', {}, code), ` ${u.count(members.length)}`, junctions.length > 0 && [' ', h('button', {class: 'link', on: {click: () => set({filters: {finding: code}, tab: 'ledger', pane: 'book'})}}, 'Show in the ledger')]),
      (members[0].action ?? members[0].advice) && h('p', {class: 'advice'}, members[0].action ?? members[0].advice, members[0].reason && h('small', {}, ` ${members[0].reason}`)),
      h('ul', {class: 'notes'}, list.map(f => h('li', {class: f.severity + (mark(f).state === 'accepted' ? ' accepted' : '')}, line(f), placeButton(f), remarks(f)))),
      list.length < members.length && h('p', {}, h('button', {on: {click: () => { unfolded.add(code); draw(); }}}, `Show all ${u.count(members.length)}`)));
  }
}

/** Messages are written to follow a place in the text report; on their own they begin with a capital. */
export const sentence = text => text.charAt(0).toUpperCase() + text.slice(1);
const mark = f => state.marks.get(f.place) ?? {state: 'open', reason: '', assignee: '', version: 0, comments: []};
const accepted = list => list.filter(f => mark(f).state === 'accepted').length;

function line(f) {
  const j = f.junction && state.ledger.byId.get(f.junction);
  return [sentence(f.message), ' ', j && h('button', {class: 'link', on: {click: () => set({selected: j.id, pane: 'slip'})}}, `${kindText(kindOf(j, state.reviews))}, ${u.length(j.lengthM)}`),
    !j && (f.elements ?? []).slice(0, 3).map(e => [' ', h('small', {}, state.ledger.elements.get(e)?.name ?? '', ' ', h('code', {}, e))])];
}

/** What people did about a finding, and the means to do something. */
export function remarks(f) {
  const m = mark(f);
  const root = h('div', {class: 'remarks'});
  const message = h('span', {role: 'alert', class: 'refused'});
  const store = async change => {
    try {
      const next = await api.putFinding(state.analysis.id, m.id, {state: m.state, reason: m.reason, acceptedBy: m.acceptedBy ?? '', assignee: m.assignee, version: m.version, ...change});
      document.activeElement?.blur();
      set({marks: new Map(state.marks).set(f.place, next)});
      say('Saved.');
    } catch (e) { put(message, ' ' + e.message); }
  };
  const form = (label, value, button, send, more) => {
    const input = h('input', {value, maxlength: 4000, required: true});
    const show = h('form', {class: 'inline', on: {submit: e => { e.preventDefault(); send(input.value.trim()); }}}, field(label, input), more, h('button', {class: 'main'}, button), ' ',
      h('button', {type: 'button', on: {click: () => show.remove()}}, 'Leave it'));
    root.append(show);
    input.focus();
  };
  const comment = () => {
    const author = h('input', {value: remembered('author') ?? '', maxlength: 200, autocomplete: 'name'});
    form('Comment', '', 'Add', async text => {
      try {
        remember('author', author.value.trim());
        const next = await api.comment(state.analysis.id, m.id, text, author.value.trim());
        document.activeElement?.blur();
        set({marks: new Map(state.marks).set(f.place, next)});
      } catch (e) { put(message, ' ' + e.message); }
    }, field('Your name', author));
  };
  const accept = () => {
    const name = h('input', {value: remembered('author') ?? '', maxlength: 200, required: true, autocomplete: 'name'});
    form('Why it can stay', '', 'Accept', text => {
      remember('author', name.value.trim());
      return store({state: 'accepted', reason: text, acceptedBy: name.value.trim()});
    }, field('Your name', name));
  };
  put(root,
    m.state === 'accepted' && h('p', {}, h('b', {}, 'Accepted: '), m.reason, m.acceptedBy && h('small', {}, ` ${m.acceptedBy}, ${new Date(m.acceptedAt).toLocaleDateString()}`)),
    m.assignee && h('p', {}, h('b', {}, 'With: '), m.assignee),
    m.comments.length > 0 && h('ul', {class: 'comments'}, m.comments.map(c => h('li', {}, h('b', {}, c.author || 'Somebody'), ` ${new Date(c.created).toLocaleDateString()}: `, c.text))),
    h('span', {class: 'doings'},
      m.state === 'accepted' ? h('button', {class: 'link', on: {click: () => store({state: 'open', reason: '', acceptedBy: ''})}}, 'Reopen')
        : h('button', {class: 'link', on: {click: accept}}, 'Accept…'), ' · ',
      h('button', {class: 'link', on: {click: () => form('Who looks after it', m.assignee, 'Assign', text => store({assignee: text}))}}, 'Assign…'), ' · ',
      h('button', {class: 'link', on: {click: comment}}, 'Comment…')), message);
  return root;
}
