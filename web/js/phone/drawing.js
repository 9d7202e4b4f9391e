// Drawings on a small screen: the section without its sheet, and for each hold point the same with what is looked at marked in it.

import {h, put} from '../dom.js';
import {nameOf} from './names.js';
import {open, sectionOf} from './roof.js';

/** What words of a check stand for in a drawing, by its classes. */
const SHOWN = [[/\btape/i, '.tape'], [/bead|sealant|slump|gun/i, '.bead,.soft,.exposed'],
  [/screw|fasten|rivet|clamp/i, '.screw-head,.washer,.shank'], [/closure|plug/i, '[data-part="metal closure"] *,.plug'],
  [/\b(cap|cover|apron|counterflashing|flashing|trim|cleat|hem|zee|hook|reglet)/i,
    '[data-part^="metal"]:not([data-part="metal closure"]) *'], [/\b(pan|pans|panel|panels|seam|seams)\b/i, '.panel,.seam'],
  [/boot|pipe/i, '.pipe']];
const QUIET = 'text,.leader,.dot,.ring,.dim,.halo,.caption,.axis{display:none}'
  + '.metal,.panel,.seam,.underlayment,.clip,.tape,.bead,.soft,.shank,.washer,.thread,.screw-head,.deck,.wall,.pipe{opacity:.28}';

/** The classes of what a check is about. */
const shownIn = check => SHOWN.filter(([words]) => words.test(check)).map(([, css]) => css);

/** The drawing without the sheet round it: a section says which part of it that is. */
function cut(svg) {
  const view = /data-view="([-\d. ]+)"/.exec(svg)?.[1];
  const alone = tag => tag.replace(/ (width|height)="[^"]*"/g, '').replace(/viewBox="[^"]*"/, `viewBox="${view}"`);
  return view ? svg.replace(/<svg[^>]*>/, alone) : svg;
}

const NUMBERS = /-?\d+(?:\.\d+)?/g, MARGIN_MM = 7, LEAST_MM = 36;

/** Points of an element, as it states them; none of one that is turned or moved. */
function pointsOf(el) {
  if (el.closest('[transform]')) return [];
  const get = (...names) => names.map(n => Number(el.getAttribute(n)));
  if (el.hasAttribute('points')) {
    const all = el.getAttribute('points').match(NUMBERS)?.map(Number) ?? [];
    return all.flatMap((x, i) => i % 2 ? [] : [[x, all[i + 1]]]);
  }
  return el.hasAttribute('cx') ? [get('cx', 'cy')] : el.hasAttribute('x1') ? [get('x1', 'y1'), get('x2', 'y2')] : [];
}

/** The part of the view that has what is looked at, or nothing; panels run through all of it and count only where nothing else is. */
function near(svg, classes) {
  const [x, y, w, high] = /viewBox="([-\d. ]+)"/.exec(svg)[1].split(' ').map(Number);
  const small = classes.filter(c => c !== '.panel,.seam');
  const drawn = new DOMParser().parseFromString(svg.replace(/<style>[^]*?<\/style>/, ''), 'image/svg+xml');
  const found = [...drawn.querySelectorAll((small.length ? small : classes).join(','))].flatMap(pointsOf)
    .filter(p => p[0] > x && p[0] < x + w && p[1] > y && p[1] < y + high);
  if (!found.length) return '';
  const span = (i, from, all) => {
    const at = found.map(p => p[i]), low = Math.min(...at) - MARGIN_MM, up = Math.max(...at) + MARGIN_MM;
    const size = Math.max(LEAST_MM, up - low);
    return [Math.max(from, (low + up - size) / 2), Math.min(all, size)];
  };
  const [left, wide] = span(0, x, w), [top, tall] = span(1, y, high);
  return svg.replace(/viewBox="[-\d. ]+"/, `viewBox="${left} ${top} ${wide} ${tall}"`);
}

/** With what is looked at in red, and the rest pale. */
function marked(whole, classes) {
  const svg = near(whole, classes);
  const loud = classes.flatMap(c => c.split(',')).join(',');
  const strokes = `${loud}{opacity:1;stroke:#b3000c;stroke-opacity:1}${classes.includes('.tape') ? '.tape{stroke-width:.7}' : ''}`;
  return svg.replace(/<\/style>/, `${QUIET}${strokes}</style>`);
}

/** Addresses of drawings that were shown: drawn anew at once, and nothing jumps under the thumb. */
const shown = new Map();

/** An image can't run anything, and a blob needs no connection. Its size is told before it is there. */
function image(key, svg, alt) {
  if (!shown.has(key)) {
    const [w, high] = /viewBox="([-\d. ]+)"/.exec(svg)?.[1].split(' ').slice(2) ?? [];
    shown.set(key, {src: URL.createObjectURL(new Blob([svg], {type: 'image/svg+xml'})), width: w, height: high});
  }
  return h('img', {...shown.get(key), alt});
}

const keyOf = (place, item) => `${open.sheet.result} ${place.id} ${item?.id ?? ''}`;

/** The drawing of a place. */
export function drawing(place) {
  const root = h('figure', {class: 'section'}), key = keyOf(place);
  const fill = svg => put(root, svg
    ? [h('button', {class: 'plain-button', 'aria-label': 'Enlarge or shrink the drawing',
      on: {click: () => root.classList.toggle('large')}},
      image(key, svg, `Section of ${nameOf(place.id)}`)), h('figcaption', {}, 'Tap to enlarge; push it aside to see the rest.')]
    : h('p', {class: 'quiet'}, 'The drawing is not on this telephone.'));
  if (shown.has(key)) fill(key); else sectionOf(place).then(svg => fill(svg && cut(svg)));
  return root;
}

/** A small one that shows what a hold point is about; nothing where the drawing has no part of it. */
export function pointer(place, item) {
  const classes = shownIn(`${item.label} ${item.check}`), root = h('figure', {class: 'pointer'}), key = keyOf(place, item);
  if (!item.check || !classes.length) return null;
  const fill = svg => put(root, image(key, svg, `What to look at, in red: ${item.check}`));
  if (shown.has(key)) fill(key);
  else {
    sectionOf(place).then(svg => {
      const part = svg && /data-view=/.test(svg) && marked(cut(svg), classes);
      if (part) fill(part); else root.remove();
    });
  }
  return root;
}
