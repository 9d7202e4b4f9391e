// The physics that a design should know: water, movement, wind, weather, sealant, metals. Each figure with the equation and inputs
// behind it.

import {h, put} from '../dom.js';
import {state, watch} from '../state.js';
import {capital} from '../units.js';
import {written} from '../units/written.js';

const TOPICS = {
  movement: ['Movement', 'Metal grows and shrinks with its temperature; what holds it, and what seals it, has to follow.'],
  water: ['Rain on the flattest face', 'How deep and how fast it runs, and how far it creeps back under a lap.'],
  wind: ['Wind-driven rain', 'Wind holds water up: what stands or laps less than this is passed.'],
  weather: ['Weather while sealing', 'Sealant sticks to dry metal only.'],
  sealant: ['Sealant', 'How long it takes to cure, and what it needs to stay where it was put.'],
  metals: ['Metals in contact', 'Wet metals that are far apart eat the lesser one away.'],
};

export function mountEstimates(root) {
  const draw = () => state.ledger && root.isConnected && put(root, content(state.ledger.raw.estimates ?? []));
  watch(['ledger', 'units'], draw);
  root.addEventListener('shown', draw);
}

function content(all) {
  if (!all.length) {
    return [h('h2', {}, 'Estimates'), h('p', {class: 'empty'},
      'This result holds no estimates: it has no sloping face, or an earlier version of the program made it.')];
  }
  const topics = [...new Set([...Object.keys(TOPICS), ...all.map(e => e.topic)])];
  return [h('h2', {}, 'What water, weather and movement do to this roof'),
    h('p', {}, 'Estimates for comparison, from the faces of this roof and the values of the roof system; '
      + 'other values under Order give other figures. They are no design.'),
    topics.map(t => topic(t, all.filter(e => e.topic === t)))];
}

function topic(name, list) {
  const [title, about] = TOPICS[name] ?? [name, ''];
  return list.length > 0 && h('section', {class: 'estimates'}, h('h3', {}, title), about && h('p', {class: 'quiet'}, about),
    h('dl', {class: 'figures'}, list.map(e => h('div', {}, h('dt', {}, capital(written(e.name))),
      h('dd', {}, h('b', {}, inWords(e.value)), h('small', {}, written(e.basis)))))));
}

/** The result's own word for a safe pair of metals, as a user would say it. */
const inWords = value => capital(written(value).replace('small-noble', 'the small part is nobler'));
