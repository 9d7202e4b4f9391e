// What users did about a finding: accepted it, assigned it, wrote about it.

import {field, h, link, put, say} from '../dom.js';
import {set, state, remembered, remember} from '../state.js';
import * as api from '../api.js';

const NONE = {state: 'open', reason: '', assignee: '', version: 0, comments: []};

/** @returns {import('../types.js').Mark} what was done about a finding */
export const markOf = f => state.marks.get(f.place) ?? NONE;

/** Takes what the service stored; a field that was being written in gives up the focus, so that the page may draw anew. */
function take(f, mark) {
  document.activeElement?.blur();
  set({marks: new Map(state.marks).set(f.place, mark)});
}

/** What was done about a finding, and the means to do something. */
export function remarks(f) {
  const m = markOf(f), root = h('div', {class: 'remarks'}), message = h('span', {role: 'alert', class: 'refused'});
  const place = {f, m, root, message};
  put(root,
    m.state === 'accepted' && h('p', {}, h('b', {}, 'Accepted: '), m.reason, acceptedBy(m)),
    m.assignee && h('p', {}, h('b', {}, 'With: '), m.assignee),
    m.comments.length > 0 && h('ul', {class: 'comments'}, m.comments.map(comment)),
    h('span', {class: 'doings'},
      m.state === 'accepted' ? link('Reopen', () => store(place, {state: 'open', reason: '', acceptedBy: ''}))
        : link('Accept…', () => askAccept(place)), ' · ',
      link('Assign…', () => ask(place, 'Who looks after it', m.assignee, 'Assign', text => store(place, {assignee: text}))), ' · ',
      link('Comment…', () => askComment(place))), message);
  return root;
}

const acceptedBy = m =>
  m.acceptedBy && h('small', {}, ` ${m.acceptedBy}, ${new Date(m.acceptedAt).toLocaleDateString()}`);

const comment = c =>
  h('li', {}, h('b', {}, c.author || 'Unnamed user'), ` ${new Date(c.created).toLocaleDateString()}: `, c.text);

async function store({f, m, message}, change) {
  try {
    take(f, await api.putFinding(state.analysis.id, m.id,
      {state: m.state, reason: m.reason, acceptedBy: m.acceptedBy ?? '', assignee: m.assignee, version: m.version, ...change}));
    say('Saved.');
  } catch (e) {
    put(message, ' ' + e.message);
  }
}

/** A line to write in, below the finding. */
function ask({root}, label, value, button, send, more) {
  const input = h('input', {value, maxlength: 4000, required: true});
  const submit = e => {
    e.preventDefault();
    send(input.value.trim());
  };
  const form = h('form', {class: 'inline', on: {submit}}, field(label, input), more, h('button', {class: 'main'}, button), ' ',
    h('button', {type: 'button', on: {click: () => form.remove()}}, 'Leave it'));
  root.append(form);
  input.focus();
}

/** Who accepts a finding says why, and who they are: the report and the gate name them. */
function askAccept(place) {
  const name = h('input', {value: remembered('author') ?? '', maxlength: 200, required: true, autocomplete: 'name'});
  const send = reason => {
    remember('author', name.value.trim());
    return store(place, {state: 'accepted', reason, acceptedBy: name.value.trim()});
  };
  ask(place, 'Why it can stay', '', 'Accept', send, field('Your name', name));
}

function askComment(place) {
  const author = h('input', {value: remembered('author') ?? '', maxlength: 200, autocomplete: 'name'});
  const send = async text => {
    try {
      remember('author', author.value.trim());
      take(place.f, await api.comment(state.analysis.id, place.m.id, text, author.value.trim()));
    } catch (e) {
      put(place.message, ' ' + e.message);
    }
  };
  ask(place, 'Comment', '', 'Add', send, field('Your name', author));
}
