// What the chosen junction requires: metal, closures, sealant, fasteners; why it is what it is, and how each number came about.

import {h} from '../dom.js';
import {state} from '../state.js';
import {kindText} from '../ledger/marks.js';
import {byRules} from '../ledger/result.js';
import {inWords} from '../parts/factwords.js';
import {measured} from './facts.js';
import * as u from '../units.js';
import {written} from '../units/written.js';

/** @param {object} j a junction with all that the result has of it */
export function requirements(j) {
  const on = x => x.face ? ` on ${x.face}` : '';
  const sealant = x =>
    [x.form, x.exposure === 'exposed' ? ', exposed' : ', concealed', x.role === 'secondary' ? ', second line' : ''].join('');
  return [why(j),
    part('Metal', ['Part', 'Pieces', 'Length'], (j.metal ?? []).map(m =>
      [[m.part, on(m)], u.count(m.pieces), m.lengthM > 0 ? u.run(m.lengthM) : ''])),
    part('Closures to cut', ['Part', 'Count', 'Length', 'Bevel'], (j.closures ?? []).map(c =>
      [[c.part, on(c), c.shorterThanMinimum && ', short'], u.count(c.count), u.length(c.lengthM), u.degrees(c.bevelDegrees)])),
    part('Sealant', ['Where', 'What', 'Lines', 'Length'], (j.seals ?? []).map(x =>
      [[x.place, on(x)], sealant(x), u.count(x.lines), u.run(x.lengthM)])),
    part('Fasteners', ['Line', 'What', 'Count', 'Spacing'], (j.fasteners ?? []).map(x =>
      [[x.place, on(x), x.throughTape && ', through tape', x.exposed && ', exposed'], fastener(x), u.count(x.count),
        u.small(x.spacingM)])),
    movement(j),
    behind(j),
    steps(j), measured(j)];
}

/** Type and length of a fastener, what it joins, and its slot where what lies on top slides. */
const fastener = x => x.type && [`${x.type.replace('-', ' ')} ${u.small(x.lengthM)}, ${x.joins.replace('-', ' to ')}`,
  x.slotM > 0 && `, slots ${u.small(x.slotM)}`];

/** How the panels that end at the junction are fixed or move there. */
function movement(j) {
  const panels = (state.ledger.raw.panels ?? []).flatMap(p => [['low-end', p.lowEnd], ['high-end', p.highEnd]]
    .filter(([, e]) => e.junctions.includes(j.id)).map(([end, e]) => ({...e, face: p.face, isFixed: p.fixed === end})));
  const faces = [...new Set(panels.map(p => p.face))];
  return part('Panels that end here', ['Face', 'Fixed', 'Free', 'Gap', 'Opens', 'Slot'], faces.map(id => {
    const own = panels.filter(p => p.face === id), free = own.filter(p => !p.isFixed), most = f => Math.max(0, ...own.map(f));
    return [id, u.count(own.length - free.length), u.count(free.length), u.small(most(p => p.gapM)), u.small(most(p => p.opensM)),
      u.small(most(p => p.slotM))];
  }));
}

function part(title, heads, rows) {
  if (!rows.length) return null;
  const isNumber = c => typeof c === 'string' && /^[−\d,.\s′″/–°]+( ?(m|mm|ft|in))?$/.test(c);
  return h('section', {}, h('h3', {}, title), h('div', {class: 'scroll'}, h('table', {class: 'plain'},
    h('thead', {}, h('tr', {}, heads.map((t, i) => h('th', {scope: 'col', class: i && t !== 'What' ? 'num' : ''}, t)))),
    h('tbody', {}, rows.map(r => h('tr', {}, r.map(c => h('td', {class: isNumber(c) ? 'num' : ''}, c))))))));
}

/** Why the rules give the junction its kind. */
function why(j) {
  const e = j.explanation;
  if (!e) return null;
  const code = x => h('code', {}, x), name = kindText(byRules(j).kind).toLowerCase();
  const shapes = e.shapes ?? [];
  return h('section', {}, h('h3', {}, j.decided ? `What the rules say: ${name}` : `Why ${name}`),
    h('p', {}, shapes.length === 1 ? ['Its measured facts fit one shape and no other: ', code(shapes[0]), '.']
      : shapes.length ? ['More than one shape matches it: ', shapes.map((x, i) => [i ? ', ' : '', code(x)]), '.']
        : ['No shape matches it.', e.nearest && [' The nearest is ', code(e.nearest), '.']]),
    e.missed?.length > 0 && h('ul', {}, e.missed.map(m => h('li', {}, inWords(m)))));
}

/** What the detail relies on where no sealant is left, and where the detail comes from. */
function behind(j) {
  const d = state.ledger.details.get(j.detail);
  return d && h('section', {}, h('h3', {}, 'Without any sealant'), h('p', {}, written(d.withoutSealant), ' ',
    d.metalFirst === true ? 'The metal alone still leads the water off.' : 'The joint relies on its sealant.'),
  d.source && h('p', {class: 'quiet'}, `Source of the detail: ${written(d.source)}`));
}

/** The arithmetic, with what each value came from. */
function steps(j) {
  const list = j.steps ?? j.arithmetic ?? [];
  return list.length > 0 && h('section', {}, h('h3', {}, 'Step by step'),
    h('ol', {class: 'steps'}, list.map(x => h('li', {}, typeof x === 'string' ? written(x) : step(x)))));
}

function step(x) {
  const result = x.result ?? x.value;
  return [h('span', {}, x.what ?? x.name ?? ''), ' ', (x.formula || x.rule) && h('code', {}, x.formula ?? x.rule), ' ',
    x.values && h('span', {class: 'quiet'}, x.values), ' ',
    result !== undefined && h('b', {}, `= ${result}${x.unit ? ' ' + x.unit : ''}`), x.source && h('small', {}, ` ${x.source}`)];
}

/** What has to be checked before work goes on. */
export function hold(j) {
  const points = j.holdPoints ?? state.ledger.details.get(j.detail)?.holdPoints ?? [];
  return points.length > 0 && h('section', {class: 'hold'}, h('h3', {}, 'Hold points'),
    h('ul', {}, points.map(x => h('li', {}, typeof x === 'string' ? written(x) : [h('b', {}, `Before ${x.before}: `), written(x.check)]))));
}
