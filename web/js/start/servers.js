// Models from servers: choose project and revision, analyse it, watch the project. Only the servers of the operator's list are there
// to choose.

import {h, put, say} from '../dom.js';
import * as api from '../api.js';
import {chooser} from './chooser.js';
import {together} from './together.js';
import {showWatches} from './watches.js';

const LOOK_AGAIN_MS = 5000;

/** The panel, or null where the operator lists no server. */
export async function serversPanel() {
  const {servers, watching} = await api.servers();
  if (!servers.length) return null;
  const message = h('div', {role: 'alert'}), watched = h('div', {});
  const fail = (title, detail) => put(message, h('div', {class: 'trouble'}, h('h3', {}, title), h('p', {}, detail)));
  const joint = together(fail);
  const refresh = () => showWatches(watched, fail);
  const turn = async (server, project) => {
    try {
      project.watched = (await api.turnWatch(server, project.id, !project.watched)).on;
      say(project.watched ? `${project.name} is watched` : `${project.name} is not watched any more`);
      return true;
    } catch (e) {
      fail('The watch was not changed', e.message);
      return false;
    }
  };
  const choices = chooser(servers, {fail, clear: () => put(message), join: joint.add, turn: watching && turn, refresh});
  const root = h('section', {class: 'served', 'aria-label': 'From a model server'}, h('h2', {}, 'From a model server'), message,
    choices, joint.root, watched);
  await refresh();
  if (watching) {
    const timer = setInterval(() => root.isConnected ? refresh() : clearInterval(timer), LOOK_AGAIN_MS);
  }
  return root;
}
