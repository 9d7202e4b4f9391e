// Builds elements. Whatever comes from a model or a user is put in as a text node or an attribute value, never as markup.

const SVG = 'http://www.w3.org/2000/svg';

function fill(el, props, children) {
  for (const [name, value] of Object.entries(props ?? {})) {
    if (value === null || value === undefined || value === false) continue;
    if (name === 'on') for (const [event, fn] of Object.entries(value)) el.addEventListener(event, fn);
    else if (name === 'style') for (const [k, v] of Object.entries(value)) el.style.setProperty(k, v);
    else if (name === 'data') Object.assign(el.dataset, value);
    else if (name === 'value') el.value = value;
    else el.setAttribute(name, value === true ? '' : String(value));
  }
  append(el, children);
  return el;
}

function append(el, children) {
  for (const c of children.flat(Infinity)) {
    if (c === null || c === undefined || c === false || c === '') continue;
    el.append(c instanceof Node ? c : document.createTextNode(String(c)));
  }
}

/** An HTML element: h('p', {class: 'note', on: {click: f}}, 'text', child). */
export function h(tag, props, ...children) {
  return fill(document.createElement(tag), props, children);
}

/** An SVG element. */
export function s(tag, props, ...children) {
  return fill(document.createElementNS(SVG, tag), props, children);
}

/** Replaces what an element holds. */
export function put(el, ...children) {
  el.replaceChildren();
  append(el, children);
  return el;
}

/** Tells a screen reader what happened. */
export function say(text) {
  document.getElementById('say').textContent = text;
}

let ids = 0;
/** A fresh id, to tie labels to fields. */
export const freshId = () => `n${++ids}`;

/** A box that scrolls by itself, also by keys, with a name for those who can't see it. */
export const scrolling = (label, ...children) => h('div', {class: 'scroll', tabindex: 0, role: 'region', 'aria-label': label}, children);

/**
 * A plain table.
 * @param {(string|{text: *, num?: boolean})[]} heads
 * @param {Node[]} rows
 */
export const table = (heads, rows) => h('table', {class: 'plain'},
  h('thead', {}, h('tr', {}, heads.map(x => h('th', {scope: 'col', class: x.num ? 'num' : null}, x.text ?? x)))), h('tbody', {}, rows));

/** A cell of numbers. */
export const num = content => h('td', {class: 'num'}, content);

/** A button that looks like a link. */
export const link = (text, click, props) => h('button', {class: 'link', ...props, on: {click}}, text);

/** A labelled field. */
export function field(label, control, note) {
  const id = control.id || (control.id = freshId());
  return h('div', {class: 'field'}, h('label', {for: id}, label), control, note && h('small', {}, note));
}

/** A select with its options: pairs of value and text. */
export function choice(options, current, onChange, props) {
  const el = h('select', {...props, on: {change: () => onChange(el.value)}},
    options.map(([value, text]) => h('option', {value, selected: value === current}, text)));
  return el;
}
