// Revisions of the project: upload the next one, and read what changed from one to another.

import {h, put, choice} from './dom.js';
import {set, state, watch} from './state.js';
import {kindText} from './marks.js';
import {dropper, go} from './start.js';
import * as api from './api.js';
import * as u from './units.js';
import {open} from './main.js';
import {staleLink} from './decisions.js';

const MOST_ROWS = 400;
const BY = {id: 'same id', place: 'same place', elements: 'same elements'};

export function mountRevisions(root) {
  let project = null;
  const message = h('div', {role: 'alert'});
  const fail = (title, detail) => put(message, h('div', {class: 'trouble'}, h('h3', {}, title), h('p', {}, detail)));

  async function load() {
    if (!state.ledger || !root.isConnected) return;
    try {
      project = await api.project(state.analysis.project);
      const done = project.analyses.filter(a => a.state === 'done' && a.id !== state.analysis.id);
      const against = done.find(a => a.id === state.against) ?? done.filter(a => a.revision < state.analysis.revision).pop() ?? done[0];
      if (against && (state.changes?.from !== against.id || state.changes?.to !== state.analysis.id)) {
        set({changes: {...await api.changes(against.id, state.analysis.id), fromRevision: against.revision}, against: against.id});
      }
      draw();
    } catch (e) { fail('The revisions cannot be shown', e.message); }
  }

  function draw() {
    if (!project || !root.isConnected) return;
    const done = project.analyses.filter(a => a.state === 'done' && a.id !== state.analysis.id);
    put(root, h('h2', {}, 'Revisions of ', project.name), message,
      h('table', {class: 'plain'}, h('thead', {}, h('tr', {}, ['Revision', 'Model', 'When', 'State'].map(t => h('th', {scope: 'col'}, t)))),
        h('tbody', {}, project.analyses.map(a => h('tr', {'aria-current': a.id === state.analysis.id ? 'true' : null},
          h('td', {}, a.id === state.analysis.id ? h('b', {}, `${a.revision}, open now`) : h('button', {class: 'link', on: {click: () => go(a.id, open)}}, `Open ${a.revision}`)),
          h('td', {}, a.files.map(f => f.name).join(', ')), h('td', {}, new Date(a.created).toLocaleString()), h('td', {}, a.state === 'done' ? 'ready' : a.state, a.problem && h('small', {}, ' ' + a.problem.detail)))))),
      dropper(open, fail, project.id, 'Drop the next revision here'),
      done.length > 0 && h('p', {}, h('label', {}, 'Compare with revision ', choice(done.map(a => [a.id, String(a.revision)]), state.against, v => { set({against: v, changes: null}); load(); }))),
      state.changes && difference(state.changes));
  }

  watch(['changes', 'units'], draw);
  watch(['ledger'], () => { project = null; });
  root.addEventListener('shown', load);
}

function difference(c) {
  const signed = (a, b) => `${b - a >= 0 ? '+' : '−'}${u.run(Math.abs(b - a))}`;
  const same = !c.changed.length && !c.added.length && !c.removed.length;
  return h('section', {class: 'changed'},
    h('h3', {}, same ? `Nothing changed since revision ${c.fromRevision}` : `Since revision ${c.fromRevision}: ${u.count(c.added.length)} added, ${u.count(c.removed.length)} gone, ${u.count(c.changed.length)} changed, ${u.count(c.same)} as before`),
    !same && h('p', {class: 'quiet'}, 'In the plan and in 3-D: ', ['added', 'changed', 'gone'].map(k => h('span', {class: 'key'}, h('i', {class: 'sign ' + k, 'aria-hidden': 'true'}), k, ' '))),
    c.decisionsGone.length > 0 && h('p', {class: 'hand'}, `✎ Decided by hand in revision ${c.fromRevision}, about lines that are gone: ${c.decisionsGone.map(d => `${d.junction} (${[d.kind && kindText(d.kind), d.detail].filter(Boolean).join(', ')}: ${d.reason})`).join('; ')}`),
    staleLink() && h('p', {}, staleLink()),
    lines('Added', c.added, l => [pick(l), u.length(l.lengthM), '']),
    lines('Gone', c.removed, l => [kindText(l.kind), u.length(l.lengthM), '']),
    lines('Changed', c.changed, p => [pick(p.after, p.before), `${u.length(p.before.lengthM)} → ${u.length(p.after.lengthM)}`, `${p.changes.join(', ')} (found by ${BY[p.by]})`]),
    h('h3', {}, 'Length by kind'),
    h('table', {class: 'plain'}, h('thead', {}, h('tr', {}, h('th', {scope: 'col'}, 'Kind'), ['Before', 'Now', 'Difference'].map(t => h('th', {scope: 'col', class: 'num'}, t)))),
      h('tbody', {}, c.lengths.map(l => h('tr', {}, h('td', {}, kindText(l.kind)), h('td', {class: 'num'}, u.run(l.beforeM)), h('td', {class: 'num'}, u.run(l.afterM)), h('td', {class: 'num'}, Math.abs(l.afterM - l.beforeM) < 5e-4 ? '' : signed(l.beforeM, l.afterM)))))),
    h('h3', {}, 'Difference in the order'), amounts(c) ?? h('p', {}, 'No number of the order changed.'));
}

function pick(l, before) {
  return [h('button', {class: 'link', on: {click: () => set({selected: l.id, pane: 'slip'})}}, kindText(l.kind)), before && before.kind !== l.kind && ` (was ${kindText(before.kind)})`];
}

function lines(title, list, cells) {
  return list.length > 0 && [h('h3', {}, title), h('table', {class: 'plain'}, h('thead', {}, h('tr', {}, h('th', {scope: 'col'}, 'Junction'), h('th', {scope: 'col', class: 'num'}, 'Length'), h('th', {scope: 'col'}, 'What'))),
    h('tbody', {}, list.slice(0, MOST_ROWS).map(l => h('tr', {}, cells(l).map((x, i) => h('td', {class: i === 1 ? 'num' : ''}, x)))))),
    list.length > MOST_ROWS && h('p', {}, `and ${u.count(list.length - MOST_ROWS)} more`)];
}

/** The numbers of the order that differ, or null where none does. */
export function amounts(c) {
  const list = c.quantities.filter(q => q.before === null || q.after === null || Math.abs(q.before - q.after) > 1e-9);
  if (!list.length) return null;
  const text = (q, x) => x === null ? '–' : u.byName(q.name.split('.').pop(), x);
  return h('table', {class: 'plain'}, h('thead', {}, h('tr', {}, h('th', {scope: 'col'}, 'Quantity'), ['Before', 'Now', 'Difference'].map(t => h('th', {scope: 'col', class: 'num'}, t)))),
    h('tbody', {}, list.map(q => h('tr', {}, h('td', {}, q.name.split('.').map(u.words).join(', ')), h('td', {class: 'num'}, text(q, q.before)), h('td', {class: 'num'}, text(q, q.after)),
      h('td', {class: 'num'}, q.before === null || q.after === null ? '' : `${q.after >= q.before ? '+' : '−'}${text(q, Math.abs(q.after - q.before))}`)))));
}
