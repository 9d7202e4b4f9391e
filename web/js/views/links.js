// The links that let a crew onto the page on the roof: made, shown once, copied, revoked.

import {choice, field, h, put, say, scrolling, table} from '../dom.js';
import {state} from '../state.js';
import * as api from '../api/site.js';
import {when} from '../parts/dates.js';

const SCOPES = [['view', 'look'], ['tick', 'tick hold points'], ['sign', 'tick and sign off']];

/** The panel; it fetches by itself. */
export function linksPanel() {
  const list = h('div', {}), made = h('div', {role: 'status'}), project = state.analysis.project;
  const draw = async () => {
    const links = await api.roofLinks(project);
    put(list, links.length > 0 ? scrolling('Links', table(['For', 'May', 'State', 'Ends', ''], [...links].reverse().map(l => row(l, draw))))
      : h('p', {class: 'quiet'}, 'No link was made yet.'));
  };
  draw().catch(e => put(list, h('p', {class: 'refused'}, e.message)));
  return h('section', {class: 'links'}, h('h3', {}, 'Links for the crew'), h('p', {}, 'A link opens this roof on a telephone, and nothing '
    + 'else; nobody needs an account. It ends by itself, and can be revoked.'), form(project, made, draw), made, list);
}

function form(project, made, draw) {
  const name = h('input', {type: 'text', required: true, maxlength: 100, autocomplete: 'off'});
  const days = h('input', {type: 'number', min: 1, max: 400, value: 14, required: true});
  let scope = 'tick';
  return h('form', {class: 'doings', on: {submit: async e => {
    e.preventDefault();
    try {
      show(made, await api.makeRoofLink(project, {scope, name: name.value.trim(), days: Number(days.value)}));
      name.value = '';
      await draw();
    } catch (problem) {
      put(made, h('p', {class: 'refused'}, problem.message));
    }
  }}}, field('For', name), field('May', choice(SCOPES, scope, v => { scope = v; })), field('Days', days),
  h('button', {class: 'main'}, 'Make a link'));
}

/** The link itself is told this once. */
function show(root, link) {
  const url = new URL(link.path, location.href).href;
  const input = h('input', {type: 'text', readonly: true, value: url, 'aria-label': 'The link'});
  const copy = async () => {
    input.select();
    await navigator.clipboard?.writeText(url);
    say('Copied.');
  };
  put(root, h('p', {}, `The link for ${link.name}, shown this once:`), h('p', {class: 'doings'}, input,
    h('button', {on: {click: copy}}, 'Copy')));
}

const stateOf = l => l.valid ? 'valid' : l.revoked ? `revoked ${when(l.revoked)}` : 'ended';

function row(l, draw) {
  const revoke = async () => {
    if (!confirm(`Revoke the link of ${l.name}? Telephones that have it can send nothing more.`)) return;
    await api.revokeRoofLink(l.id);
    await draw();
  };
  return h('tr', {}, h('td', {}, l.name), h('td', {}, SCOPES.find(([s]) => s === l.scope)?.[1] ?? l.scope), h('td', {}, stateOf(l)),
    h('td', {}, when(l.expires)), h('td', {}, l.valid && h('button', {on: {click: revoke}}, 'Revoke')));
}
