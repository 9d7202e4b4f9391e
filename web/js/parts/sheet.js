// The program's own drawings, which the service sends as SVG. A sheet's style stands in a shadow root of its own, so that it and the page
// leave each other alone; from its content only shapes and words are taken over.

import {h, s, put} from '../dom.js';

const SHAPES = new Set(['svg', 'g', 'defs', 'pattern', 'rect', 'path', 'line', 'polyline', 'polygon', 'circle', 'text', 'tspan', 'title',
  'desc', 'clipPath']);
const FORBIDDEN = /^(on|style$|href$|xlink:)/i;
const KEPT = 40;
/** Sheets by the result that they belong to: a manual override makes another result at the same address. */
const sheets = new WeakMap();

/** Fetches a sheet; the service says by 304 whether what the browser has is still right. */
export async function fetchSheet(ledger, url) {
  if (!sheets.has(ledger)) sheets.set(ledger, new Map());
  const texts = sheets.get(ledger);
  if (texts.has(url)) return texts.get(url);
  const answer = await fetch(url, {headers: {Accept: 'image/svg+xml, application/problem+json'}}).catch(() => null);
  if (!answer) throw new Error('The service does not answer. Is it still running?');
  if (!answer.ok) throw new Error((await answer.json().catch(() => ({}))).detail ?? `The service answered ${answer.status}.`);
  const text = await answer.text();
  texts.set(url, text);
  if (texts.size > KEPT) texts.delete(texts.keys().next().value);
  return text;
}

/** A sheet as a tree of its own, and its style; what is neither shape nor words is left behind. */
function parseSheet(text) {
  const style = /<style>([^<]*)<\/style>/.exec(text)?.[1] ?? '';
  const root = new DOMParser().parseFromString(text.replace(/<style>[^<]*<\/style>/, ''), 'image/svg+xml').documentElement;
  if (root.localName !== 'svg') throw new Error('The drawing cannot be read.');
  const walk = el => {
    for (const child of [...el.children]) if (SHAPES.has(child.localName)) walk(child); else child.remove();
    for (const a of [...el.attributes]) if (FORBIDDEN.test(a.name)) el.removeAttribute(a.name);
  };
  walk(root);
  return {svg: document.importNode(root, true), style: style.replace(/@page[^}]*}/, '')};
}

/** Shows a sheet in an element, under its own style and more. */
function show(host, {svg, style}, more) {
  const sheets = [style, more].map(text => {
    const x = new CSSStyleSheet();
    x.replaceSync(text);
    return x;
  });
  const shadow = host.shadowRoot ?? host.attachShadow({mode: 'open'});
  shadow.adoptedStyleSheets = sheets;
  shadow.replaceChildren(svg);
}

const WHOLE = ':host { display: block } svg { display: block; width: 100%; height: auto; }';

/** In the detail panel the words beside the section would be too small to read: numbers stand in the drawing, the words below it. */
const WITHOUT_WORDS = `.label, .leader, .dot, .ring, .number, .frame, .paper, .title, .subtitle, .head, .dim, .dim-text, .enlarge, .enlarged
  { display: none }
  .halo { font-size: 4.6px } .metal { stroke-width: 1.1 } .panel { stroke-width: .9 } .tape, .soft, .bead { stroke-width: .45 }
  `;
const IN_PANEL = `${WHOLE} svg { max-height: clamp(11rem, 100cqh - 8.5rem, 24rem) } ${WITHOUT_WORDS}
  .mark-line { stroke: #55606a; stroke-width: .35 } .mark-ring { fill: #fff; stroke: #55606a; stroke-width: .35 }
  .mark-number { text-anchor: middle; fill: #14202b }`;

const TINY = `:host { display: block } svg { display: block; width: 100%; height: 100%; } ${WITHOUT_WORDS} .halo { display: none }`;

const NODE = `:host { display: block } svg { display: block; width: 100%; height: auto;
  max-height: clamp(11rem, 100cqh - 8.5rem, 24rem) } .head, .caption { display: none }
  .arm-name, .dim-text { font-size: 3.3px } .balloon-text { font-size: 3.8px }`;

/** The drawings of a node's sheet as large as there is room, without what is written beside them; the host is in the page. */
export function nodeDrawing(host, text) {
  const sheet = parseSheet(text), {svg} = sheet, drawn = svg.querySelector('g.drawn');
  svg.removeAttribute('width');
  svg.removeAttribute('height');
  [...svg.children].forEach(el => { if (el !== drawn && el.localName !== 'defs') el.remove(); });
  show(host, sheet, NODE);
  const pad = 3, b = drawn.getBBox();
  svg.setAttribute('viewBox', [b.x - pad, b.y - pad, b.width + 2 * pad, b.height + 2 * pad].join(' '));
}

/** What is cut, as a small picture without words and numbers. */
export function tinySection(host, text) {
  const sheet = parseSheet(text), {svg} = sheet;
  crop(svg, 4);
  show(host, sheet, TINY);
}

/** Leaves of a sheet what is cut, with some millimetres around it, and answers what then is in sight. */
function crop(svg, pad) {
  const view = (svg.querySelector('g.cut')?.dataset.view ?? '0 0 420 297').split(' ').map(Number);
  const box = [view[0] - pad, view[1] - pad, view[2] + 2 * pad, view[3] + 2 * pad];
  svg.setAttribute('viewBox', box.join(' '));
  svg.removeAttribute('width');
  svg.removeAttribute('height');
  [...svg.children].forEach(el => { if (!isCut(el)) el.remove(); });
  return box;
}

/**
 * The section in short: cropped to what is cut, numbers for labels.
 * @param {Element} host that gets the figure
 * @param {string} text of the sheet
 * @returns {string[]} the words, in the order of the numbers
 */
export function shortSection(host, text) {
  const sheet = parseSheet(text), {svg} = sheet;
  const pointed = [...svg.querySelectorAll('g.pointed')].map(pointedAt);
  const box = crop(svg, 14);
  const ring = Math.max(box[2], box[3] * 1.4) * 0.021, taken = [];
  pointed.sort((a, b) => a.number - b.number || a.x - b.x || a.y - b.y);
  pointed.forEach((p, i) => {
    const at = freePlace(p, box, ring, taken, pointed);
    taken.push(at);
    svg.append(number(p, at, ring, i + 1));
  });
  show(host, sheet, IN_PANEL);
  return pointed.map(p => p.words);
}

/** The words of a label, and the place that it points to. */
function pointedAt(g) {
  const circle = g.querySelector('circle.dot');
  return {words: g.dataset.words ?? [...g.querySelectorAll('text')].map(t => t.textContent.trim()).join(' '),
    number: Number(g.dataset.number ?? 0),
    x: Number(circle?.getAttribute('cx')), y: Number(circle?.getAttribute('cy'))};
}

/** Titles, legend and frame stand on the sheet itself; the section is in a group. */
const isCut = el => ['defs', 'title', 'desc'].includes(el.localName) || el.classList.contains('cut');

/** Around the place that a number points to, the nearest spot where no other number is. */
function freePlace(p, box, ring, taken, pointed) {
  const cx = box[0] + box[2] / 2, cy = box[1] + box[3] / 2, out = Math.atan2(p.y - cy, p.x - cx);
  const clear = (at, places, rings) => places.every(t => Math.hypot(t.x - at.x, t.y - at.y) > rings * ring);
  const inBox = at => at.x > box[0] + ring && at.x < box[0] + box[2] - ring && at.y > box[1] + ring && at.y < box[1] + box[3] - ring;
  for (let r = 2.8 * ring; r < 20 * ring; r += ring) {
    for (let k = 0; k < 12; k++) {
      const turn = out + (k % 2 ? 1 : -1) * Math.ceil(k / 2) * Math.PI / 6;
      const at = {x: p.x + r * Math.cos(turn), y: p.y + r * Math.sin(turn)};
      if (inBox(at) && clear(at, taken, 2.4) && clear(at, pointed, 1.6)) return at;
    }
  }
  return {x: p.x, y: p.y};
}

function number(p, at, ring, n) {
  const d = Math.hypot(at.x - p.x, at.y - p.y) || 1, k = Math.max(0, d - ring) / d;
  return s('g', {},
    s('line', {class: 'mark-line', x1: p.x, y1: p.y, x2: p.x + (at.x - p.x) * k, y2: p.y + (at.y - p.y) * k}),
    s('circle', {cx: p.x, cy: p.y, r: 0.9, class: 'dot-end'}),
    s('circle', {class: 'mark-ring', cx: at.x, cy: at.y, r: ring}),
    s('text', {class: 'mark-number', x: at.x, y: at.y + ring * 0.47, style: {'font-size': ring * 1.35 + 'px'}}, n));
}

/** The whole sheet over the page, as wide as there is room, and a way to print it. */
export function openSheet(title, url, text) {
  const host = h('div', {class: 'whole-sheet'});
  const dialog = h('dialog', {class: 'sheet-dialog', 'aria-label': title, on: {close: () => dialog.remove()}},
    h('header', {}, h('h2', {}, title), h('a', {href: url, target: '_blank', rel: 'noopener'}, 'Open to print'),
      h('button', {on: {click: () => dialog.close()}}, 'Close')),
    h('div', {class: 'sheet-scroll', tabindex: 0, role: 'region', 'aria-label': 'The sheet'}, host));
  document.body.append(dialog);
  show(host, parseSheet(text), WHOLE);
  dialog.showModal();
}

/** Where a drawing can't be had: why. */
export const noSheet = (root, e) => put(root, h('p', {class: 'quiet'}, e.message));
