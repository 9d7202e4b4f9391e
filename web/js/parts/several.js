// Accepting several findings at once, with one reason and one name.

import {field, h, put, say} from '../dom.js';
import {remember, remembered, set, state} from '../state.js';
import {markOf} from './remarks.js';
import {count} from '../units.js';
import * as api from '../api.js';

/**
 * The form for what is picked; nothing while nothing is.
 * @param {import('../types.js').Finding[]} picked
 * @param {() => void} onDone
 */
export function acceptSeveral(picked, onDone) {
  if (!picked.length) return null;
  const reason = h('input', {maxlength: 4000, required: true}), message = h('span', {role: 'alert', class: 'refused'});
  const name = h('input', {value: remembered('author') ?? '', maxlength: 200, required: true, autocomplete: 'name'});
  const button = h('button', {class: 'main'}, picked.length > 1 ? `Accept all ${count(picked.length)}` : 'Accept it');
  const submit = async e => {
    e.preventDefault();
    button.disabled = true;
    remember('author', name.value.trim());
    await acceptAll(picked, reason.value.trim(), name.value.trim(), message, onDone);
    button.disabled = false;
  };
  return h('form', {class: 'inline several', 'aria-label': 'Accept what is picked', on: {submit}},
    h('b', {}, `${count(picked.length)} picked`), field('Why they can stay', reason), field('Your name', name), button, ' ', message);
}

/** One after the other: what was stored before one is refused stays stored, and shows. */
async function acceptAll(picked, reason, acceptedBy, message, onDone) {
  const marks = new Map(state.marks);
  try {
    for (const f of picked) {
      const m = markOf(f);
      marks.set(f.place, await api.putFinding(state.analysis.id, m.id,
        {state: 'accepted', reason, acceptedBy, assignee: m.assignee, version: m.version}));
    }
    document.activeElement?.blur();
    onDone();
    say(`${count(picked.length)} accepted.`);
  } catch (e) {
    put(message, e.message);
  } finally {
    set({marks});
  }
}
