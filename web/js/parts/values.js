// A value of the roof system as a control: a choice where there are words to choose from, else a text with its unit.

import {choice, h} from '../dom.js';
import {capital, words} from '../units.js';

/** The name of a field as words: "purchase.clips.screws" is "Clips, screws". */
export const fieldName = path => capital(path.replace(/^purchase\./, '').split('.').map(words).join(', ').toLowerCase());

/**
 * @param {{type: string, choices: string[], min: string, max: string}} [field] of the form; a text where it isn't known
 * @param {string} text
 * @param {(text: string) => void} typed
 * @param {object} [props]
 */
export function control(field, text, typed, props = {}) {
  if (field?.choices.length) {
    const names = {true: 'yes', false: 'no'};
    return choice(field.choices.map(c => [c, names[c] ?? c.replaceAll('-', ' ')]), text, typed, props);
  }
  return h('input', {value: text, maxlength: 100, ...props, title: field ? range(field) : null,
    on: {...props.on, input: e => typed(e.currentTarget.value.trim())}});
}

/** What a value may be, in words. */
export function range(field) {
  return field.min && field.max ? `${field.what || 'a whole number'} from ${field.min} to ${field.max}`
    : field.what || (field.type === 'text' ? 'a text' : '');
}

/**
 * What a field means and where its default comes from, folded away.
 * @param {{meaning: string, source: string, usual: string}} field
 */
export function help(field) {
  return h('details', {class: 'help'}, h('summary', {'aria-label': `What ${fieldName(field.path)} is`, title: field.meaning}, '?'),
    h('small', {}, `${fieldName(field.path)}: ${field.meaning}. ${range(field) ? `Expected: ${range(field)}. ` : ''}`
      + `Usual: ${field.usual}. Source: ${field.source}.`));
}
