// What the lines mean; a click shows only these.

import {h, s, put} from '../dom.js';
import {state, watch, filter} from '../state.js';
import {SEALS} from '../ledger/marks.js';
import {run} from '../units.js';

/** The line of a class of seals, as a picture. */
export const swatch = seal => {
  const m = SEALS[seal];
  return s('svg', {class: 'swatch', width: 34, height: 10, viewBox: '0 0 34 10', 'aria-hidden': 'true'},
    s('line', {x1: 1, x2: 33, y1: 5, y2: 5, stroke: m.colour, 'stroke-width': m.width, 'stroke-dasharray': m.dash?.join(' ')}));
};

export function legend() {
  const root = h('ul', {class: 'legend', 'aria-label': 'Lines by what seals them'});
  const draw = () => {
    if (!state.ledger) return;
    const lengths = {};
    for (const j of state.ledger.lines) lengths[j.seal] = (lengths[j.seal] ?? 0) + j.lengthM;
    put(root, Object.keys(SEALS).filter(k => lengths[k]).map(k => h('li', {}, h('button', {
      'aria-pressed': String(state.filters.seal === k), title: `${run(lengths[k])}; click to show only these`,
      on: {click: () => filter('seal', state.filters.seal === k ? '' : k)}}, swatch(k), SEALS[k].text))));
  };
  watch(['ledger', 'filters', 'units'], draw);
  draw();
  return root;
}
