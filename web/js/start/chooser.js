// Three choices, each from the one before: server, project, revision; and what to do with the revision.

import {choice, field, h, put} from '../dom.js';
import {go} from '../navigate.js';
import * as api from '../api.js';
import {dated} from './watches.js';

const quiet = text => h('span', {class: 'quiet'}, text);

/**
 * @param {string[]} servers
 * @param {{fail: Function, clear: Function, join: Function, turn: Function|false, refresh: Function}} does what a choice leads to; `turn`
 *     turns the watch of a project on and off, where the service watches
 */
export function chooser(servers, does) {
  const c = {does, server: '', asked: 0, projects: h('span', {class: 'slot'}), revisions: h('span', {class: 'slot'}), actions: h('p', {})};
  const first = servers.length === 1 ? servers[0] : '';
  const names = servers.map(s => [s, s]);
  const pick = choice(first ? names : [['', 'Choose…'], ...names], first, name => chooseServer(c, name));
  if (first) queueMicrotask(() => chooseServer(c, first));
  return h('div', {}, h('div', {class: 'choices'}, field('Server', pick), c.projects, c.revisions), c.actions);
}

/** Runs one question at a time: an answer that comes after another choice was made counts no more. */
async function ask(c, place, words, question, show) {
  const mine = ++c.asked;
  c.does.clear();
  put(place, quiet(words));
  try {
    const answer = await question();
    if (mine === c.asked) show(answer);
  } catch (e) {
    if (mine !== c.asked) return;
    put(place);
    c.does.fail(`Nothing came from server ${c.server}`, e.message);
  }
}

function chooseServer(c, name) {
  c.server = name;
  [c.projects, c.revisions, c.actions].forEach(el => put(el));
  if (!name) return;
  ask(c, c.projects, 'Asking for its projects…', () => api.servedProjects(name), all => {
    if (!all.length) return put(c.projects, quiet('It shows no project to this user.'));
    const options = [['', 'Choose…'], ...all.map(p => [String(p.id), `${p.name} (${p.schema})`])];
    const chosen = id => chooseProject(c, all.find(p => String(p.id) === id));
    put(c.projects, field('Project', choice(options, '', chosen)));
  });
}

function chooseProject(c, project) {
  put(c.revisions);
  put(c.actions);
  if (!project) return;
  ask(c, c.revisions, 'Asking for its revisions…', () => api.servedRevisions(c.server, project.id), all => {
    const newest = all.length ? String(all[all.length - 1].id) : '';
    const pick = choice(all.map(r => [String(r.id), dated(r)]).reverse(), newest, () => {});
    put(c.revisions, all.length ? field('Revision', pick) : quiet('It has no revision yet.'));
    const words = project.watched ? 'Stop watching this project' : 'Watch this project';
    put(c.actions, all.length > 0 && revisionButtons(c, project, all, pick),
      c.does.turn && h('button', {on: {click: () => turn(c, project)}}, words));
  });
}

function revisionButtons(c, project, all, pick) {
  const join = () => c.does.join(itemOf(c.server, project, all.find(r => String(r.id) === pick.value)));
  return [h('button', {class: 'main', on: {click: () => analyse(c, project, pick.value)}}, 'Analyse this revision'), ' ',
    h('button', {on: {click: join}}, 'Add to an analysis of several'), ' '];
}

const itemOf = (server, project, r) => ({server, project: project.id, revision: r.id,
  text: `${project.name}, revision ${r.number}${r.comment ? ` (${r.comment})` : ''}, from ${server}`});

async function analyse(c, project, revision) {
  try {
    await go((await api.analyseServed(c.server, project.id, revision)).id);
  } catch (e) {
    c.does.fail('The revision was not accepted', e.message);
  }
}

async function turn(c, project) {
  if (!await c.does.turn(c.server, project)) return;
  chooseProject(c, project);
  await c.does.refresh();
}
