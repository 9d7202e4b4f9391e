// Models of one building that lie elsewhere than they say: the movement that a finding names, or one that is typed, and the analysis again.

import {choice, field, h, link} from '../dom.js';
import {state} from '../state.js';
import {placeModels} from '../actions/again.js';
import * as u from '../units.js';

const PARTS = [['dx', 'Along x, m', '0'], ['dy', 'Along y, m', '0'], ['dz', 'Up, m', '0'], ['degrees', 'Turn, °', '0'],
  ['factor', 'Lengths times', '1']];

const models = () => state.ledger.raw.models ?? [];
/** Two models may have one name. */
const nameOf = i => models()[i].file + (models().some((m, k) => k !== i && m.file === models()[i].file) ? ` [${i + 1}]` : '');
/** A movement as people say it: lengths times, turned, then moved. */
function inWords(movement) {
  const [x, y, z, turn, factor = 1] = movement.split(',').map(Number);
  const way = (m, ahead, back) => m !== 0 && `${u.length(Math.abs(m))} ${m > 0 ? ahead : back}`;
  const moved = [way(x, 'along x', 'against x'), way(y, 'along y', 'against y'), way(z, 'up', 'down')].filter(Boolean);
  return [factor !== 1 && `lengths times ${factor}`, turn !== 0 && `turned ${Math.abs(turn)}° ${turn > 0 ? 'anticlockwise' : 'clockwise'}`,
    moved.length > 0 && `moved ${moved.join(', ')}`].filter(Boolean).join('; ');
}
const shown = movement => [h('code', {title: 'As the command line takes it'}, movement), ' ', h('small', {}, inWords(movement)), ' '];
const offered = () => state.ledger.findings.filter(f => f.placement).map(f => f.placement);

/** The movement of a finding, to do with one click; with it those of the other findings, where there are several. */
export function placeButton(f) {
  if (!f.placement) return null;
  const message = h('span', {role: 'status'}), all = offered();
  const place = placements => once(row, () => placeModels(placements, message));
  const row = h('p', {class: 'placing'},
    h('button', {class: 'main', on: {click: () => place([f.placement])}}, `Place ${nameOf(f.placement.model)} there`), ' ',
    all.length > 1 && [h('button', {on: {click: () => place(all)}}, `Place all ${all.length} as suggested`), ' '],
    shown(f.placement.movement), message);
  return row;
}

/** One run at a time: what is clicked again waits for the answer. */
async function once(root, work) {
  const buttons = [...root.querySelectorAll('button')];
  buttons.forEach(b => { b.disabled = true; });
  await work();
  buttons.forEach(b => { b.disabled = false; });
}

/** Where models were placed, and the means to place one by typing; nothing where there is only one. */
export function placingForm() {
  if (models().length < 2) return null;
  const placed = models().map((m, i) => [m, i]).filter(([m]) => m.placement);
  const message = h('p', {role: 'alert', class: 'refused'});
  const takeBack = i => e => once(e.target.parentNode, () => placeModels([{model: i, movement: null}], message));
  const item = ([m, i]) => h('li', {}, `${nameOf(i)}: `, shown(m.placement), link('Take it back', takeBack(i)));
  return h('section', {class: 'code-group', 'aria-label': 'Where models lie'},
    placed.length > 0 && [h('h3', {}, 'Placed manually'), h('ul', {class: 'notes'}, placed.map(item))],
    h('details', {open: false}, h('summary', {}, 'Place a model manually'), typed(message)));
}

function typed(message) {
  const inputs = PARTS.map(() => h('input', {inputmode: 'decimal', maxlength: 40, required: true}));
  let model = models().length - 1;
  const show = () => {
    const now = (models()[model].placement ?? '').split(',');
    inputs.forEach((input, k) => { input.value = now[k] || PARTS[k][2]; });
  };
  show();
  const which = choice(models().map((m, i) => [String(i), nameOf(i)]), String(model), v => {
    model = Number(v);
    show();
  });
  const submit = e => {
    e.preventDefault();
    once(form, () => placeModels([{model, movement: inputs.map(i => i.value.trim()).join(',')}], message));
  };
  const form = h('form', {class: 'placing', on: {submit}},
    h('p', {}, 'Lengths are multiplied, the model is turned anticlockwise about its own origin, then it is moved. '
      + 'The others stay where they are.'),
    h('div', {class: 'fields'}, field('Model', which), inputs.map((input, k) => field(PARTS[k][1], input))),
    h('p', {}, h('button', {class: 'main'}, 'Place and analyse again')), message);
  return form;
}
