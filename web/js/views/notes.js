// Cautions for work on roofs, what the results cover and what not, and what this result came from.

import {h, put} from '../dom.js';
import {state, watch} from '../state.js';
import * as u from '../units.js';

const CAUTIONS = [
  'Work at height needs a fall protection plan by a competent person. Never tie off to a gutter, a cap, a seam clip or a skylight.',
  'A skylight, a hatch and an unfilled opening are holes: cover or guard them before anyone works near.',
  'Wet, dewy or frosty metal is slippery; dark metal in the sun burns, and sealant behaves differently on it. Measure the temperature of '
    + 'the metal, not of the air.',
  'Sheet edges and swarf cut: gloves and eye protection. Wind takes loose sheets and whoever holds them.',
  'Keep clear of overhead lines and of the live conductors of solar modules; stay off in lightning. A qualified person sees to the bonding '
    + 'of a metal roof.',
  'Read the safety data sheet of every sealant, primer and solvent; ventilate; isocyanates need protection; never mix products.',
  'Hot work needs a fire watch. Old sealants and paints may hold lead or asbestos: have them tested before they are disturbed.',
  'Snow slides off a metal roof all at once: mind what lies below the eaves.',
];
const SCOPE = [
  'Everything here is an estimate from the geometry of the model and from stated assumptions. Verify on site before ordering or cutting.',
  'Local code, the panel system’s tested assembly and its warranty, and the licensed design professional govern where they say otherwise.',
  'It is no structural, uplift or drainage design.',
  'Metal keeps the water out first; sealant inside the metal joint comes second; a bead third. A bead alone is never the defence.',
  'What the model lacks is not in the result: a pipe that nobody drew has no junction.',
  'Manual overrides of kinds and details are marked as such wherever they show, and each has a finding. Quantities and the order follow '
    + 'them; under Order stands what they change against the rules alone.',
];
const KEYS = 'In the table: arrow keys, Page Up and Page Down, Home and End move; Enter folds a group or goes to the junction. '
  + 'In the plan: arrow keys move, + and − zoom, 0 shows all. In 3-D: arrow keys turn, + and − zoom, 0 shows all.';

export function mountNotes(root) {
  const draw = () => state.ledger && root.isConnected && put(root, content());
  watch(['ledger', 'units'], draw);
  root.addEventListener('shown', draw);
}

const facts = rows => h('dl', {class: 'facts'}, rows.filter(([, v]) => v).map(([k, v]) => [h('dt', {}, k), h('dd', {}, v)]));

const model = m => facts([['File', m.file], ['Schema', m.schema], ['Length unit', m.lengthUnit], ['Written by', m.application],
  ['Size', u.bytes(m.bytes)], ['SHA-256', h('code', {}, m.sha256)]]);

const tolerance = ([k, v]) => [u.words(k), /M$/.test(k) ? u.small(v) : u.byName(k, v)];

function content() {
  const raw = state.ledger.raw;
  return [h('h2', {}, 'Before anyone goes on the roof'), h('ul', {class: 'cautions'}, CAUTIONS.map(t => h('li', {}, t))),
    h('h2', {}, 'What these results are, and are not'), h('ul', {class: 'cautions'}, SCOPE.map(t => h('li', {}, t))),
    h('h2', {}, 'Where they came from'),
    (raw.models ?? []).map(model),
    facts([['Program', `${raw.program?.name} ${raw.program?.version}`], ['Shapes', h('code', {}, raw.program?.shapes)]]),
    raw.tolerances && [h('h3', {}, 'Tolerances applied'), facts(Object.entries(raw.tolerances).map(tolerance))],
    h('h2', {}, 'Keys'), h('p', {}, KEYS)];
}
