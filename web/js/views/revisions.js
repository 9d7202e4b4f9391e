// Revisions of the project: upload the next one, and read what changed from one to another.

import {choice, field, h, link, put, scrolling, table} from '../dom.js';
import {address, set, state, watch} from '../state.js';
import {go, open} from '../navigate.js';
import {dropper} from '../parts/dropper.js';
import {checkedIn, when} from '../parts/dates.js';
import {difference} from './difference.js';
import * as api from '../api.js';

export function mountRevisions(root) {
  const message = h('div', {role: 'alert'});
  const v = {root, message, project: null,
    fail: (title, detail) => put(message, h('div', {class: 'trouble'}, h('h3', {}, title), h('p', {}, detail)))};
  watch(['changes', 'units'], () => draw(v));
  watch(['ledger'], () => { v.project = null; });
  root.addEventListener('shown', () => load(v));
}

const isDone = a => a.state === 'done';

/** In the order of the revisions, which is that of the project's list. */
const isBefore = (v, a, b) => v.project.analyses.findIndex(x => x.id === a) < v.project.analyses.findIndex(x => x.id === b);

async function load(v) {
  if (!state.ledger || !v.root.isConnected) return;
  try {
    const to = state.analysis.id;
    v.project = await api.project(state.analysis.project);
    const done = v.project.analyses.filter(a => isDone(a) && a.id !== to);
    const against = done.find(a => a.id === state.against) ?? done.filter(a => isBefore(v, a.id, to)).pop() ?? done[0];
    if (against && (state.changes?.from !== against.id || state.changes?.to !== to)) {
      const changes = await api.changes(against.id, to);
      if (state.analysis?.id !== to) return;
      set({changes, against: against.id});
    }
    draw(v);
  } catch (e) {
    v.fail('The revisions cannot be shown', e.message);
  }
}

function draw(v) {
  const {project, root} = v;
  if (!project || !state.ledger || !root.isConnected) return;
  const done = project.analyses.filter(isDone), isServed = project.analyses.some(a => a.origin), c = state.changes;
  // Where the next revision comes from a server, dropping a file is the exception and stands last.
  const drop = dropper(v.fail, project.id, isServed ? 'Drop a file to compare with the server’s revisions' : 'Drop the next revision here');
  put(root, h('h2', {}, 'Revisions of ', project.name), v.message, list(project.analyses, isServed), !isServed && drop,
    done.length > 1 && pickers(v, done),
    done.length > 1 && c && difference(c, !isBefore(v, c.from, c.to)), isServed && drop);
}

/** What is compared: any revision with any other. The drawing shows the second, so that choosing another one there opens it. */
function pickers(v, done) {
  const date = a => a.origin?.checkedIn && new Date(a.origin.checkedIn).toLocaleDateString();
  const options = all => all.map(a => [a.id, [a.label, a.origin?.comment, date(a)].filter(Boolean).join(' · ')]);
  const compareTo = against => {
    set({against, changes: null});
    load(v);
  };
  return h('div', {class: 'pair'},
    field('Compare revision', choice(options(done.filter(a => a.id !== state.analysis.id)), state.against, compareTo)),
    field('with revision', choice(options(done), state.analysis.id, compareWith)),
    state.changes && h('a', {href: api.changesTextAt(state.changes.from, state.changes.to), target: '_blank', rel: 'noopener'},
      'The comparison as a report'));
}

/** Opens another revision, with what it is compared with and the rest of what the address holds. */
async function compareWith(id) {
  const against = id === state.against ? state.analysis.id : state.against;
  history.pushState(null, '', address({analysis: {id}, against}));
  await open(id);
  set({against});
}

/** @param {import('../types.js').Revision[]} analyses */
function list(analyses, isServed) {
  // What a server's revision is called says all about its one model.
  const named = !analyses.every(a => a.origin);
  const heads = ['Revision', ...(isServed ? ['Comment', 'Checked in'] : []), ...(named ? ['Model'] : []),
    isServed ? 'Analysed' : 'When', 'State'];
  return scrolling('Revisions', table(heads, analyses.map(a => row(a, isServed, named))));
}

function row(a, isServed, named) {
  const isOpen = a.id === state.analysis.id;
  return h('tr', {'aria-current': isOpen ? 'true' : null},
    h('td', {class: 'at'}, isOpen ? h('b', {}, `${a.label}, open now`) : link(`Open ${a.label}`, () => go(a.id))),
    isServed && [h('td', {}, a.origin?.comment), h('td', {}, checkedIn(a))],
    named && h('td', {}, a.files.map(f => f.name).join(', ')), h('td', {}, when(a.created)),
    h('td', {}, a.state === 'done' ? 'ready' : a.state, a.problem && h('small', {}, ' ' + a.problem.detail)));
}
