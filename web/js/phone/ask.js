// Asks the user for words, one question at a time.

import {h} from '../dom.js';

/**
 * @param {string} title
 * @param {{name: string, label: string, value?: string, rows?: number, tick?: boolean}[]} fields
 * @param {string} done what the button says
 * @returns {Promise<Record<string, string|boolean>|null>} nothing where the user gave up
 */
export function ask(title, fields, done = 'Keep it') {
  return new Promise(resolve => {
    const inputs = fields.map(f => h(f.rows ? 'textarea' : 'input', {name: f.name, id: 'ask-' + f.name, value: f.value ?? '',
      rows: f.rows, type: f.tick ? 'checkbox' : null, required: !f.tick, autocomplete: 'off'}));
    const end = answer => { dialog.close(); dialog.remove(); resolve(answer); };
    const form = h('form', {on: {submit: e => {
      e.preventDefault();
      end(Object.fromEntries(inputs.map(i => [i.name, i.type === 'checkbox' ? i.checked : i.value.trim()])));
    }}}, h('h2', {}, title), fields.map((f, i) => h('div', {class: f.tick ? 'ask-tick' : 'ask-field'},
      h('label', {for: 'ask-' + f.name}, f.label), inputs[i])),
    h('div', {class: 'ask-doings'}, h('button', {type: 'button', on: {click: () => end(null)}}, 'Not now'),
      h('button', {class: 'main'}, done)));
    const dialog = h('dialog', {class: 'ask', on: {cancel: () => { dialog.remove(); resolve(null); }}}, form);
    document.body.append(dialog);
    dialog.showModal();
  });
}
