// How much of the roof's length is reviewed, modelled and questioned: in words and as bars; and the model's own flashings along one line.

import {h, link} from '../dom.js';
import {state, filter, set} from '../state.js';
import {coverage} from '../ledger/coverage.js';
import {percent, run} from '../units.js';

const bar = (words, label, ...parts) =>
  h('span', {class: 'share'}, h('span', {}, words), h('span', {class: 'bar', role: 'img', 'aria-label': label}, parts));

/** Each share of the length in words, and as a bar: what it is shows by its pattern as well as by its colour. */
export function bars() {
  const c = coverage(state.ledger, state.reviews, state.marks), all = state.ledger.totalM, of = x => percent(x / (all || 1));
  const part = (name, text) => c[name] > 0
    && h('span', {class: 'part ' + name, style: {width: 100 * c[name] / (all || 1) + '%'}, title: `${text}: ${run(c[name])}`});
  return [
    bar(`Checked ${of(c.checked)} of ${run(all)}`,
      `Checked ${of(c.checked)}, questions ${of(c.question)}, to check again ${of(c.recheck)} of all length`,
      part('checked', 'Checked'), part('question', 'Questions'), part('recheck', 'To check again')),
    bar(link(`Flashing in the model ${of(c.modelled)}`, showUnmodelled, {title: 'Show the junctions that have no flashing in the model'}),
      `Flashing in the model along ${of(c.modelled)} of all length`, part('modelled', 'Flashing in the model')),
    bar(`With open findings ${run(c.findings)}`, `With open findings ${of(c.findings)} of all length`,
      part('findings', 'With open findings')),
    c.gutter > 0 && h('span', {}, `Gutters in the model ${run(c.gutter)}`),
    c.overridden > 0 && h('span', {}, `Overridden ${run(c.overridden)}`),
  ];
}

function showUnmodelled() {
  filter('modelled', 'no');
  set({tab: 'ledger'});
}

/** For the detail panel: the model's own flashings and gutters along the chosen line. */
export function alongLine(j) {
  const list = j.modelled ?? [];
  return h('section', {}, h('h3', {}, 'Flashing in the model'), list.length > 0
    ? h('ul', {class: 'elements'}, list.map(p => {
      const e = state.ledger.elements.get(p.element);
      return h('li', {}, `${e ? `${e.ifcClass} ${e.name}` : ''} `, h('code', {}, p.element),
        `: ${p.as} along ${run(p.lengthM)} of ${run(j.lengthM)}`);
    }))
    : h('p', {class: 'quiet'}, 'The model shows none along this line.'));
}
