// What to order: every number with what it came from, net to packs; the same as a list for a spreadsheet.

import {h, put} from './dom.js';
import {state, watch} from './state.js';
import * as api from './api.js';
import {measure} from './ledger.js';
import {save} from './save.js';
import {editor} from './system.js';
import {amounts} from './revisions.js';
import {handSection} from './decisions.js';
import * as u from './units.js';

export function mountOrder(root) {
  const draw = () => state.ledger && root.isConnected && put(root, content());
  watch(['ledger', 'units', 'changes', 'handChanges'], draw);
  root.addEventListener('shown', draw);
  function content() {
    const q = state.ledger.raw.quantities, system = state.ledger.raw.system;
    const groups = q && Object.keys(q).length ? order(q, system ?? {}) : [];
    return [h('h2', {}, 'Order'), groups.length ? [lead(), groups.map(table), cuts(q)] : h('p', {class: 'empty'}, 'This result holds no quantities.'),
      handSection(), changed(), system && h('section', {}, h('h2', {}, 'Roof system in force'), h('p', {}, 'Change a value, with its unit, and compute again: the result becomes the next revision, and what changed is shown.'), editor(system, draw))];
    function lead() {
      return [h('p', {}, 'Net is what the junctions take together. Waste is added once, for the whole roof, and so is the rounding to whole packs.'),
        h('p', {class: 'doings'}, h('button', {on: {click: () => save('order.csv', csv(groups))}}, 'Save the order as CSV'), ' ',
          h('a', {class: 'button', href: api.cutsAt(state.analysis.id), download: 'cuts.csv'}, 'Cut list as CSV'), ' ',
          h('a', {class: 'button', href: api.reportAt(state.analysis.id), target: '_blank', rel: 'noopener'}, 'Report as text'), ' ',
          h('button', {on: {click: () => print()}}, 'Print'))];
    }
  }
}

const share = text => Number(/-?[\d.]+/.exec(typeof text === 'object' ? text.value : text ?? '')?.[0] ?? NaN) / 100;
const text = v => v === undefined ? '' : typeof v === 'object' ? `${v.value} ${v.unit ?? ''}`.trim() : String(v);
const times = (n, what) => `${u.count(n)} ${what}${n === 1 ? '' : 's'}`;

/** The order as groups of lines: what, its size, net, with waste, what to buy, how that came about. */
function order(q, system) {
  const waste = typeof system.waste === 'object' && !('value' in system.waste) ? system.waste : {tape: system.waste, bead: system.waste, fasteners: system.waste};
  const plus = name => Number.isFinite(share(waste[name])) ? `+ ${u.percent(share(waste[name]))} waste` : '';
  const roll = measure(system.tape?.roll), cartridge = text(system.bead?.cartridge);
  const seals = [
    q.tape?.netM > 0 && {what: 'Sealant tape', size: [text(system.tape?.thickness), text(system.tape?.width)].filter(Boolean).join(' × '), net: u.run(q.tape.netM), gross: u.run(q.tape.orderM), buy: times(q.tape.rolls, 'roll'),
      how: [plus('tape'), roll && `÷ ${text(system.tape.roll)} a roll = ${(q.tape.orderM / roll).toFixed(1)}, rounded up`]},
    ...['concealed', 'exposed'].filter(k => q.bead?.[k]?.netM > 0).map(k => gun(k === 'exposed' ? 'Gun-grade sealant, in view' : 'Gun-grade sealant, hidden', q.bead[k])),
    q.bead && !q.bead.concealed && q.bead.netM > 0 && gun('Gun-grade sealant', q.bead),
    q.lapSealant?.netM > 0 && {...gun('Non-curing sealant in laps and seam ends', q.lapSealant), size: `laps ${u.run(q.lapSealant.lapsM)}, seam ends ${u.run(q.lapSealant.seamEndsM)}`},
    q.inSeam?.netM > 0 && {what: 'Seam sealant, factory or field', size: q.inSeam.faces?.length ? `seams of ${q.inSeam.faces.slice(0, 12).join(', ')}${q.inSeam.faces.length > 12 ? ' …' : ''}` : '', net: u.run(q.inSeam.netM), gross: u.run(q.inSeam.orderM), buy: u.run(q.inSeam.orderM), how: [plus('bead'), 'by the length of seam']}];
  function gun(what, b) {
    return {what, size: text(system.bead?.size), net: [u.run(b.netM), u.volume(b.netMl)], gross: u.volume(b.orderMl), buy: times(b.cartridges, 'cartridge'),
      how: [plus('bead'), cartridge && `÷ ${cartridge} a cartridge, rounded up`]};
  }
  const places = Object.entries(q.fasteners?.byPlace ?? {});
  const screws = q.fasteners && [{what: 'Fasteners, all lines', size: text(system.fasteners?.metal), net: u.count(q.fasteners.net), gross: '', buy: u.count(q.fasteners.order), how: [plus('fasteners'), 'rounded up']},
    ...places.map(([place, n]) => ({what: place, net: u.count(n), sub: true}))];
  const pieces = (what, x, size, lost) => ({what, size, net: [x.pieces !== undefined && times(x.pieces, 'piece'), x.lengthM > 0 && u.run(x.lengthM)], gross: '', buy: x.order ?? x.pieces ?? x.count, how: [lost && plus(lost), x.laps > 0 && times(x.laps, 'lap')]});
  const metal = [q.closures?.pieces > 0 && pieces('Closures between the seams', q.closures, q.closures.shorterThanMinimum > 0 ? `${q.closures.shorterThanMinimum} shorter than can be worked` : '', 'closures'),
    ...(q.parts ?? []).map(p => pieces(p.part, p, p.girthM > 0 && p.lengthM > 0 ? `girth ${u.small(p.girthM)}` : '', 'flashing')),
    !q.parts && q.caps?.pieces > 0 && pieces('Caps', q.caps, ''),
    ...(q.boots ?? []).map(b => ({what: 'Pipe boot', size: `for a pipe of ${u.small(b.diameterM)}`, net: '', buy: b.count})),
    ...(q.curbs ?? []).map(c => ({what: 'Curb', size: `${u.small(c.widthM)} × ${u.small(c.depthM)}`, net: '', buy: c.count})),
    q.plugs?.pieces > 0 && pieces('Plugs', q.plugs, `${u.count(q.plugs.seamEnds)} at seam ends, ${u.count(q.plugs.corners)} in corners`)];
  const pans = q.panelSum?.count > 0 && q.panelSum;
  return [['Sealant', seals], ['Fasteners', screws || []], ['Metal', metal],
    ['Panels', pans ? [{what: 'Panels', size: text(system.panel?.coverage ?? system.panelCoverage) + ' coverage', net: [times(pans.count, 'panel'), u.run(pans.lengthM)], gross: '', buy: u.count(pans.count), how: [`${u.area(pans.areaM2)} of sheet as cut`]}] : []]]
    .map(([title, lines]) => ({title, lines: lines.filter(Boolean)})).filter(g => g.lines.length);
}

const joined = v => [v].flat().filter(Boolean).join(', ');
const capital = t => t.charAt(0).toUpperCase() + t.slice(1);

function table({title, lines}) {
  return h('section', {}, h('h3', {}, title), h('div', {class: 'scroll', tabindex: 0, role: 'region', 'aria-label': title}, h('table', {class: 'plain order-table'},
    h('thead', {}, h('tr', {}, h('th', {scope: 'col'}, 'What'), ['Net', 'With waste', 'To order'].map(t => h('th', {scope: 'col', class: 'num'}, t)), h('th', {scope: 'col'}, 'How'))),
    h('tbody', {}, lines.map(l => h('tr', {class: l.sub ? 'sub' : ''},
      h('th', {scope: 'row'}, l.sub ? l.what : capital(l.what), l.size && h('small', {}, l.size)),
      h('td', {class: 'num'}, [l.net].flat().filter(Boolean).map((n, i) => [i > 0 && h('br'), n])), h('td', {class: 'num'}, l.gross ?? ''), h('td', {class: 'num strong'}, l.buy ?? ''), h('td', {}, h('small', {}, joined(l.how)))))))));
}

function csv(groups) {
  return [['group', 'what', 'size', 'net', 'withWaste', 'order', 'how'], ...groups.flatMap(g => g.lines.map(l => [g.title, l.what, l.size ?? '', joined(l.net), l.gross ?? '', l.buy ?? '', joined(l.how)]))];
}

const MOST_CUTS = 300;

/** The pieces to cut, folded away and fetched when somebody unfolds them: the shop takes them from the list. */
function cuts(q) {
  if (!q.panelSum?.count) return null;
  const body = h('div', {}, h('p', {class: 'quiet'}, 'Fetching the cut list…'));
  const unfold = () => api.cuts(state.analysis.id).then(([heads, ...rows]) => put(body, h('div', {class: 'scroll', tabindex: 0, role: 'region', 'aria-label': 'Pieces to cut'}, h('table', {class: 'plain'},
    h('thead', {}, h('tr', {}, heads.map(t => h('th', {scope: 'col', class: isNumber(t) ? 'num' : ''}, CUT_HEADS[t] ?? t)))),
    h('tbody', {}, rows.slice(0, MOST_CUTS).map(r => h('tr', {}, r.map((c, i) => h('td', {class: isNumber(heads[i]) ? 'num' : ''}, c))))))),
    rows.length > MOST_CUTS && h('p', {}, `The first ${MOST_CUTS} of ${u.count(rows.length)}. The cut list as CSV has them all.`)), e => put(body, h('p', {}, e.message)));
  return h('details', {class: 'cuts', on: {toggle: e => e.currentTarget.open && unfold()}}, h('summary', {}, `Pieces to cut, ${u.count(q.panelSum.kinds)} kinds of panel and the closures`), body);
}

const CUT_HEADS = {part: 'Part', face: 'Face', junction: 'Junction', pieces: 'Pieces', widthM: 'Width, m', widthIn: 'Width, in', lengthM: 'Length, m', lengthIn: 'Length, in', lowBevelDegrees: 'Bevel low, °', highBevelDegrees: 'Bevel high, °', note: 'Note'};
const isNumber = head => /pieces|(M|In|Degrees)$/.test(head);

function changed() {
  return state.changes && h('section', {class: 'changed'}, h('h3', {}, `What changed since ${state.changes.fromWords}`), amounts(state.changes) ?? h('p', {}, 'No number of the order changed.'));
}
