// Models from servers: choose project and revision, analyse it, watch the project. Only the servers of the operator's list are there to choose.

import {h, put, say, choice, field} from './dom.js';
import * as api from './api.js';
import {faultWords, watchOf} from './health.js';
import {go} from './start.js';
import {together} from './together.js';

const LOOK_AGAIN_MS = 5000;
const STAGES = {found: 'waiting for its analysis', analysed: 'analysed; the answer is not with it yet', answered: 'answered', 'given-up': 'given up', passed: 'from before the watch'};

const dated = r => `${r.number}, ${new Date(r.created).toLocaleString()}${r.comment ? ': ' + r.comment : ''}`;

/** The panel, or null where the operator lists no server. */
export async function serversPanel(open) {
  const {servers, watching} = await api.servers();
  if (!servers.length) return null;
  const message = h('div', {role: 'alert'});
  const fail = (title, detail) => put(message, h('div', {class: 'trouble'}, h('h3', {}, title), h('p', {}, detail)));
  const watched = h('div', {});
  const joint = together(open, fail);
  const refresh = () => showWatches(watched, open, fail);
  const root = h('section', {class: 'served', 'aria-label': 'From a model server'}, h('h2', {}, 'From a model server'), message,
    chooser(servers, watching, open, fail, () => put(message), refresh, joint.add), joint.root, watched);
  await refresh();
  if (watching) {
    const timer = setInterval(() => root.isConnected ? refresh() : clearInterval(timer), LOOK_AGAIN_MS);
  }
  return root;
}

function chooser(servers, watching, open, fail, clear, refresh, join) {
  const projects = h('span', {class: 'slot'});
  const revisions = h('span', {class: 'slot'});
  const actions = h('p', {});
  let server = '';
  let asked = 0;

  /** Runs one question at a time: an answer that comes after another choice was made counts no more. */
  async function ask(place, words, question, show) {
    const mine = ++asked;
    clear();
    put(place, h('span', {class: 'quiet'}, words));
    try {
      const answer = await question();
      if (mine === asked) show(answer);
    } catch (e) {
      if (mine !== asked) return;
      put(place);
      fail(`Nothing came from server ${server}`, e.message);
    }
  }

  function chooseServer(name) {
    server = name;
    put(projects); put(revisions); put(actions);
    if (name) ask(projects, 'Asking for its projects…', () => api.servedProjects(name), all => {
      if (!all.length) return put(projects, h('span', {class: 'quiet'}, 'It shows no project to this user.'));
      put(projects, field('Project', choice([['', 'Choose…'], ...all.map(p => [String(p.id), `${p.name} (${p.schema})`])], '', id => chooseProject(all.find(p => String(p.id) === id)))));
    });
  }

  function chooseProject(project) {
    put(revisions); put(actions);
    if (project) ask(revisions, 'Asking for its revisions…', () => api.servedRevisions(server, project.id), all => {
      const newest = all.length ? String(all[all.length - 1].id) : '';
      const pick = choice(all.map(r => [String(r.id), dated(r)]).reverse(), newest, () => {});
      put(revisions, all.length ? field('Revision', pick) : h('span', {class: 'quiet'}, 'It has no revision yet.'));
      put(actions, all.length > 0 && h('button', {class: 'main', on: {click: () => analyse(project, pick.value)}}, 'Analyse this revision'), ' ',
        all.length > 0 && h('button', {on: {click: () => join(item(project, all.find(r => String(r.id) === pick.value)))}}, 'Add to an analysis of several'), ' ',
        watching && h('button', {on: {click: () => turn(project)}}, project.watched ? 'Stop watching this project' : 'Watch this project'));
    });
  }

  const item = (project, r) => ({server, project: project.id, revision: r.id, text: `${project.name}, revision ${r.number}${r.comment ? ` (${r.comment})` : ''}, from ${server}`});

  async function analyse(project, revision) {
    try { const {id} = await api.analyseServed(server, project.id, revision); await go(id, open); } catch (e) { fail('The revision was not taken', e.message); }
  }

  async function turn(project) {
    try {
      project.watched = (await api.turnWatch(server, project.id, !project.watched)).on;
      say(project.watched ? `${project.name} is watched` : `${project.name} is not watched any more`);
      chooseProject(project);
      await refresh();
    } catch (e) { fail('The watch was not changed', e.message); }
  }

  const first = servers.length === 1 ? servers[0] : '';
  const pick = choice([...(first ? [] : [['', 'Choose…']]), ...servers.map(s => [s, s])], first, chooseServer);
  if (first) queueMicrotask(() => chooseServer(first));
  return h('div', {}, h('div', {class: 'choices'}, field('Server', pick), projects, revisions), actions);
}

async function showWatches(place, open, fail) {
  let all;
  try {
    const [watches, {faults = []}] = await Promise.all([api.watches(), api.health()]);
    all = watches.filter(w => w.on).map(w => ({...w, fault: faults.find(f => f.part === watchOf(w.server))}));
  } catch (e) { return fail('The watched projects cannot be shown', e.message); }
  const stop = async w => {
    try { await api.turnWatch(w.server, w.project, false); await showWatches(place, open, fail); } catch (e) { fail('The watch was not changed', e.message); }
  };
  const drawn = JSON.stringify(all);
  // What did not change is left alone, so that nobody loses the place where they are.
  if (place.dataset.drawn === drawn) return;
  place.dataset.drawn = drawn;
  put(place, all.length > 0 && [h('h3', {}, 'Watched: each new revision is analysed by itself'), h('div', {class: 'scroll', tabindex: 0, role: 'region', 'aria-label': 'Watched projects'},
    h('table', {class: 'plain'},
      h('thead', {}, h('tr', {}, ['Project', 'Server', 'Newest revision', 'State', ''].map(t => h('th', {scope: 'col'}, t || h('span', {class: 'unseen'}, 'Stop'))))),
      h('tbody', {}, all.map(w => h('tr', {}, h('td', {}, w.name), h('td', {}, w.server), h('td', {}, newest(w, open)), h('td', {}, stateOf(w)),
        h('td', {}, h('button', {class: 'link', 'aria-label': `Stop watching ${w.name}`, on: {click: () => stop(w)}}, 'Stop')))))))]);
}

function newest(w, open) {
  if (!w.last) return 'none yet';
  return w.last.analysis && w.last.stage !== 'given-up' ? h('button', {class: 'link', on: {click: () => go(w.last.analysis, open)}}, dated(w.last)) : dated(w.last);
}

function stateOf(w) {
  const words = [];
  if (w.fault) words.push(faultWords(w.fault));
  if (w.problem) words.push(w.problem.detail);
  else if (!w.checked) words.push('the server is being asked');
  if (w.last) words.push((STAGES[w.last.stage] ?? w.last.stage) + (w.last.problem ? ': ' + w.last.problem : ''));
  if (w.open > 1) words.push(`${w.open} revisions to do`);
  return words.join('; ');
}
