// How much of the roof's length somebody reviewed, has a flashing in the model, and has open findings.

import {h} from './dom.js';
import {state, filter, set} from './state.js';
import {percent, run} from './units.js';
import {reviewOf} from './ledger.js';

export function coverage() {
  const c = {checked: 0, question: 0, recheck: 0, open: 0, modelled: 0, gutter: 0, findings: 0, byHand: 0};
  for (const j of state.ledger.junctions) {
    c[reviewOf(j, state.reviews)] += j.lengthM;
    c.modelled += j.modelledM ?? 0;
    c.gutter += j.gutterM ?? 0;
    if (j.found.some(f => state.marks.get(f.place)?.state !== 'accepted')) c.findings += j.lengthM;
    if (j.decided) c.byHand += j.lengthM;
  }
  return c;
}

/** Each share of the length in words, and as a bar: what it is shows by its pattern as well as by its colour. */
export function bars() {
  const c = coverage(), total = state.ledger.totalM || 1;
  const part = (name, text) => c[name] > 0 && h('span', {class: 'part ' + name, style: {width: 100 * c[name] / total + '%'}, title: `${text}: ${run(c[name])}`});
  const bar = (words, label, ...parts) => h('span', {class: 'share'}, h('span', {}, words), h('span', {class: 'bar', role: 'img', 'aria-label': label}, parts));
  return [
    bar(`Checked ${percent(c.checked / total)} of ${run(state.ledger.totalM)}`, `Checked ${percent(c.checked / total)}, questions ${percent(c.question / total)}, to check again ${percent(c.recheck / total)} of all length`,
      part('checked', 'Checked'), part('question', 'Questions'), part('recheck', 'To check again')),
    bar(h('button', {class: 'link', title: 'Show the junctions that have no flashing in the model', on: {click: () => { filter('modelled', 'no'); set({tab: 'ledger'}); }}}, `Flashing in the model ${percent(c.modelled / total)}`),
      `Flashing in the model along ${percent(c.modelled / total)} of all length`, part('modelled', 'Flashing in the model')),
    bar(`With open findings ${run(c.findings)}`, `With open findings ${percent(c.findings / total)} of all length`, part('findings', 'With open findings')),
    c.gutter > 0 && h('span', {}, `Gutters in the model ${run(c.gutter)}`),
    c.byHand > 0 && h('span', {}, `Decided by hand ${run(c.byHand)}`),
  ];
}

/** For the slip: the model's own flashings and gutters along the chosen line. */
export function alongLine(j) {
  const list = j.modelled ?? [];
  return h('section', {}, h('h3', {}, 'Flashing in the model'), list.length > 0
    ? h('ul', {class: 'elements'}, list.map(p => {
      const e = state.ledger.elements.get(p.element);
      return h('li', {}, `${e ? `${e.ifcClass} ${e.name}` : ''} `, h('code', {}, p.element), `: ${p.as} along ${run(p.lengthM)} of ${run(j.lengthM)}`);
    }))
    : h('p', {class: 'quiet'}, 'The model shows none along this line.'));
}

export const MODELLED = {yes: 'Flashing in the model', no: 'No flashing in the model', gutter: 'Gutter in the model'};

export const hasModelled = (j, what) => what === 'gutter' ? j.gutterM > 0 : what === 'yes' ? j.modelledM > 0 : !(j.modelledM > 0);
