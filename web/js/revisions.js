// Revisions of the project: upload the next one, and read what changed from one to another.

import {h, put, choice, field} from './dom.js';
import {address, set, state, watch} from './state.js';
import {kindText} from './marks.js';
import {dropper, go} from './start.js';
import * as api from './api.js';
import * as u from './units.js';
import {open} from './main.js';
import {staleLink} from './decisions.js';

const TO_THE_MINUTE = {year: 'numeric', month: 'numeric', day: 'numeric', hour: 'numeric', minute: '2-digit'};
const when = instant => new Date(instant).toLocaleString(undefined, TO_THE_MINUTE);
/** When a revision was checked in, as people here write it; empty where it comes from no server. */
export const checkedIn = a => a.origin?.checkedIn ? when(a.origin.checkedIn) : '';
export const sentence = words => words.charAt(0).toUpperCase() + words.slice(1);

const MOST_ROWS = 400;
const BY = {id: 'same id', place: 'same place', elements: 'same elements'};

export function mountRevisions(root) {
  let project = null;
  const message = h('div', {role: 'alert'});
  const fail = (title, detail) => put(message, h('div', {class: 'trouble'}, h('h3', {}, title), h('p', {}, detail)));

  async function load() {
    if (!state.ledger || !root.isConnected) return;
    try {
      const to = state.analysis.id;
      project = await api.project(state.analysis.project);
      const done = project.analyses.filter(a => a.state === 'done' && a.id !== to);
      const against = done.find(a => a.id === state.against) ?? done.filter(a => isBefore(a.id, to)).pop() ?? done[0];
      if (against && (state.changes?.from !== against.id || state.changes?.to !== to)) {
        const changes = await api.changes(against.id, to);
        if (state.analysis?.id !== to) return;
        set({changes, against: against.id});
      }
      draw();
    } catch (e) { fail('The revisions cannot be shown', e.message); }
  }

  /** In the order of the revisions, which is that of the project's list. */
  const isBefore = (a, b) => project.analyses.findIndex(x => x.id === a) < project.analyses.findIndex(x => x.id === b);

  function draw() {
    if (!project || !root.isConnected) return;
    const done = project.analyses.filter(a => a.state === 'done');
    const isServed = project.analyses.some(a => a.origin);
    // Where the next revision comes from a server, dropping a file is the exception and stands last.
    const drop = dropper(open, fail, project.id, isServed ? 'Drop a file to compare with the server’s revisions' : 'Drop the next revision here');
    put(root, h('h2', {}, 'Revisions of ', project.name), message, list(project.analyses, isServed, open), !isServed && drop,
      done.length > 1 && pickers(done),
      done.length > 1 && state.changes && difference(state.changes, !isBefore(state.changes.from, state.changes.to)), isServed && drop);
  }

  /** What is compared: any revision with any other. The drawing shows the second, so that choosing another one there opens it. */
  function pickers(done) {
    const options = all => all.map(a => [a.id, [a.label, a.origin?.comment, a.origin?.checkedIn && new Date(a.origin.checkedIn).toLocaleDateString()].filter(Boolean).join(' · ')]);
    return h('div', {class: 'pair'},
      field('Compare revision', choice(options(done.filter(a => a.id !== state.analysis.id)), state.against, v => { set({against: v, changes: null}); load(); })),
      field('with revision', choice(options(done), state.analysis.id, compareWith)),
      state.changes && h('a', {href: api.changesTextAt(state.changes.from, state.changes.to), target: '_blank', rel: 'noopener'}, 'The comparison as a report'));
  }

  /** Opens another revision, with what it is compared with and the rest of what the address holds. */
  async function compareWith(id) {
    const against = id === state.against ? state.analysis.id : state.against;
    history.pushState(null, '', address({analysis: {id}, against}));
    await open(id);
    set({against});
  }

  watch(['changes', 'units'], draw);
  watch(['ledger'], () => { project = null; });
  root.addEventListener('shown', load);
}

function list(analyses, isServed, open) {
  // What a server's revision is called says all about its one model.
  const named = !analyses.every(a => a.origin);
  const heads = ['Revision', ...(isServed ? ['Comment', 'Checked in'] : []), ...(named ? ['Model'] : []), isServed ? 'Analysed' : 'When', 'State'];
  return h('div', {class: 'scroll', tabindex: 0, role: 'region', 'aria-label': 'Revisions'}, h('table', {class: 'plain'},
    h('thead', {}, h('tr', {}, heads.map(t => h('th', {scope: 'col'}, t)))),
    h('tbody', {}, analyses.map(a => h('tr', {'aria-current': a.id === state.analysis.id ? 'true' : null},
      h('td', {class: 'at'}, a.id === state.analysis.id ? h('b', {}, `${a.label}, open now`) : h('button', {class: 'link', on: {click: () => go(a.id, open)}}, `Open ${a.label}`)),
      isServed && [h('td', {}, a.origin?.comment), h('td', {}, checkedIn(a))],
      named && h('td', {}, a.files.map(f => f.name).join(', ')), h('td', {}, when(a.created)),
      h('td', {}, a.state === 'done' ? 'ready' : a.state, a.problem && h('small', {}, ' ' + a.problem.detail)))))));
}

/** @param isLater whether what is compared with is the later of the two */
function difference(c, isLater) {
  const signed = (a, b) => `${b - a >= 0 ? '+' : '−'}${u.run(Math.abs(b - a))}`;
  const same = !c.changed.length && !c.added.length && !c.removed.length;
  return h('section', {class: 'changed'},
    h('h3', {}, same ? `Nothing changed ${isLater ? 'against' : 'since'} ${c.fromWords}` : `${isLater ? `Against ${c.fromWords}, which is later` : `Since ${c.fromWords}`}: ${u.count(c.added.length)} added, ${u.count(c.removed.length)} gone, ${u.count(c.changed.length)} changed, ${u.count(c.same)} as before`),
    !same && h('p', {class: 'quiet'}, 'In the plan and in 3-D: ', ['added', 'changed', 'gone'].map(k => h('span', {class: 'key'}, h('i', {class: 'sign ' + k, 'aria-hidden': 'true'}), k, ' '))),
    c.decisionsGone.length > 0 && h('p', {class: 'hand'}, `✎ Decided by hand in ${c.fromWords}, about lines that are gone: ${c.decisionsGone.map(d => `${d.junction} (${[d.kind && kindText(d.kind), d.detail].filter(Boolean).join(', ')}: ${d.reason})`).join('; ')}`),
    staleLink() && h('p', {}, staleLink()),
    lines('Added', c.added, l => [pick(l), u.length(l.lengthM), '']),
    lines('Gone', c.removed, l => [kindText(l.kind), u.length(l.lengthM), '']),
    lines('Changed', c.changed, p => [pick(p.after, p.before), `${u.length(p.before.lengthM)} → ${u.length(p.after.lengthM)}`, `${p.changes.join(', ')} (found by ${BY[p.by]})`]),
    findingsThatDiffer(c),
    h('h3', {}, 'Length by kind'),
    h('table', {class: 'plain'}, h('thead', {}, h('tr', {}, h('th', {scope: 'col'}, 'Kind'), ['Before', 'Now', 'Difference'].map(t => h('th', {scope: 'col', class: 'num'}, t)))),
      h('tbody', {}, c.lengths.map(l => h('tr', {}, h('td', {}, kindText(l.kind)), h('td', {class: 'num'}, u.run(l.beforeM)), h('td', {class: 'num'}, u.run(l.afterM)), h('td', {class: 'num'}, Math.abs(l.afterM - l.beforeM) < 5e-4 ? '' : signed(l.beforeM, l.afterM)))))),
    h('h3', {}, 'Difference in the order'), amounts(c) ?? h('p', {}, 'No number of the order changed.'));
}

/** Findings and overrides, as the comparison of the command line has them. */
function findingsThatDiffer(c) {
  const list = (title, all) => all.length > 0 && [h('h3', {}, `${title} (${u.count(all.length)})`),
    h('ul', {class: 'notes'}, all.slice(0, MOST_ROWS).map(f => h('li', {class: f.severity}, h('code', {}, f.code), ' ', f.message, ' ', f.junction && h('code', {}, f.junction), f.accepted && ' (accepted)'))),
    all.length > MOST_ROWS && h('p', {}, `and ${u.count(all.length - MOST_ROWS)} more`)];
  return [list('New findings', c.newFindings), list('Findings that are gone', c.goneFindings),
    c.stillFindings.length > 0 && h('p', {class: 'quiet'}, `${u.count(c.stillFindings.length)} ${c.stillFindings.length === 1 ? 'finding is' : 'findings are'} still there`),
    c.overridesUnfit.length > 0 && [h('h3', {}, 'Overrides that no longer fit'), h('ul', {}, c.overridesUnfit.map(o => h('li', {}, h('code', {}, o.junction), `: ${[o.kind && kindText(o.kind), o.detail].filter(Boolean).join(', ')}; ${o.changes.includes('gone') ? 'the line is gone' : `what changed: ${o.changes.join(', ')}`}. ${o.reason}`)))]];
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
