// For the order: every manual override and what all of them together change, with the file for the command line.

import {h, link} from '../dom.js';
import {set, state} from '../state.js';
import {kindText} from '../ledger/marks.js';
import {loadChanges} from '../actions/overrides.js';
import {amounts, staleCount, staleLink} from '../parts/differences.js';
import * as api from '../api.js';
import * as u from '../units.js';

export function overridesSection() {
  const overridden = state.ledger.junctions.filter(j => j.decided);
  if (!overridden.length && !state.analysis.decisions?.stale) return null;
  if (!state.overrideChanges) loadChanges();
  const item = j => h('li', {}, link(`${kindText(j.kind)}, ${u.length(j.lengthM)}`, () => set({selected: j.id})), `: ${j.decided.reason}`);
  return h('section', {class: 'overrides'}, h('h2', {}, 'Manual overrides'),
    overridden.length > 0 && h('ul', {}, overridden.map(item)),
    staleCount() > 0 && h('p', {class: 'overridden'}, staleLink()),
    overridden.length > 0 && h('p', {},
      h('a', {href: api.decisionsAt(state.analysis.id), download: 'decisions.json'}, 'Overrides as a file'), ' for ',
      h('code', {}, 'seamledger analyze MODEL --decisions decisions.json')),
    state.overrideChanges && h('section', {class: 'changed'}, h('h3', {}, 'What they change against the rules alone'),
      amounts(state.overrideChanges)));
}
