// The order of a result as groups of lines: what, its size, net, with waste, what to buy, how that came about.

import * as u from '../units.js';

const MOST_FACES = 12;

const share = text => Number(/-?[\d.]+/.exec(typeof text === 'object' ? text.value : text ?? '')?.[0] ?? NaN) / 100;
const textOf = v => v === undefined ? '' : typeof v === 'object' ? `${v.value} ${v.unit ?? ''}`.trim() : String(v);
const times = (n, what) => `${u.count(n)} ${what}${n === 1 ? '' : 's'}`;

/** How much waste is added to what, in words. */
function wasteOf(system) {
  const isOne = typeof system.waste !== 'object' || 'value' in system.waste;
  const waste = isOne ? {tape: system.waste, bead: system.waste, fasteners: system.waste} : system.waste;
  return name => Number.isFinite(share(waste[name])) ? `+ ${u.percent(share(waste[name]))} waste` : '';
}

/**
 * @param {object} q quantities of the result
 * @param {object} system the roof system
 * @returns {{title: string, lines: import('../types.js').OrderLine[]}[]} what isn't needed has no line
 */
export function orderGroups(q, system) {
  const plus = wasteOf(system);
  return [['Sealant', sealants(q, system, plus)], ['Fasteners', fasteners(q, system, plus)], ['Metal', metal(q, plus)],
    ['Panels', panels(q, system)]]
    .map(([title, lines]) => ({title, lines: lines.filter(Boolean)})).filter(g => g.lines.length);
}

function sealants(q, system, plus) {
  const cartridge = textOf(system.bead?.cartridge);
  const gun = (what, b) => ({what, size: textOf(system.bead?.size), net: [u.run(b.netM), u.volume(b.netMl)], gross: u.volume(b.orderMl),
    buy: times(b.cartridges, 'cartridge'), how: [plus('bead'), cartridge && `÷ ${cartridge} a cartridge, rounded up`]});
  const beads = [['concealed', 'concealed bead'], ['exposed', 'exposed bead']].filter(([k]) => q.bead?.[k]?.netM > 0);
  return [q.tape?.netM > 0 && tape(q.tape, system, plus),
    ...beads.map(([k, words]) => gun('Gun-grade sealant, ' + words, q.bead[k])),
    q.bead && !q.bead.concealed && q.bead.netM > 0 && gun('Gun-grade sealant', q.bead),
    q.lapSealant?.netM > 0 && {...gun('Non-curing sealant in laps and seam terminations', q.lapSealant),
      size: `laps ${u.run(q.lapSealant.lapsM)}, seam terminations ${u.run(q.lapSealant.seamEndsM)}`},
    q.inSeam?.netM > 0 && inSeam(q.inSeam, plus)];
}

function tape(t, system, plus) {
  const roll = u.metres(system.tape?.roll);
  return {what: 'Sealant tape', size: [textOf(system.tape?.thickness), textOf(system.tape?.width)].filter(Boolean).join(' × '),
    net: u.run(t.netM), gross: u.run(t.orderM), buy: times(t.rolls, 'roll'),
    how: [plus('tape'), roll && `÷ ${textOf(system.tape.roll)} a roll = ${(t.orderM / roll).toFixed(1)}, rounded up`]};
}

function inSeam(x, plus) {
  const faces = x.faces ?? [];
  return {what: 'Seam sealant, factory or field',
    size: faces.length ? `seams of ${faces.slice(0, MOST_FACES).join(', ')}${faces.length > MOST_FACES ? ' …' : ''}` : '',
    net: u.run(x.netM), gross: u.run(x.orderM), buy: u.run(x.orderM), how: [plus('bead'), 'by the length of seam']};
}

function fasteners(q, system, plus) {
  if (!q.fasteners) return [];
  const places = Object.entries(q.fasteners.byPlace ?? {});
  return [{what: 'Fasteners, all lines', size: textOf(system.fasteners?.metal), net: u.count(q.fasteners.net), gross: '',
    buy: u.count(q.fasteners.order), how: [plus('fasteners'), 'rounded up']},
    ...places.map(([place, n]) => ({what: place, net: u.count(n), sub: true}))];
}

function metal(q, plus) {
  const pieces = (what, x, size, lost) => ({what, size,
    net: [x.pieces !== undefined && times(x.pieces, 'piece'), x.lengthM > 0 && u.run(x.lengthM)], gross: '',
    buy: x.order ?? x.pieces ?? x.count, how: [lost && plus(lost), x.laps > 0 && times(x.laps, 'lap')]});
  const short = q.closures?.shorterThanMinimum;
  return [q.closures?.pieces > 0
      && pieces('Closures between the seams', q.closures, short > 0 ? `${short} shorter than can be worked` : '', 'closures'),
    ...(q.parts ?? []).map(p => pieces(p.part, p, p.girthM > 0 && p.lengthM > 0 ? `girth ${u.small(p.girthM)}` : '', 'flashing')),
    !q.parts && q.caps?.pieces > 0 && pieces('Caps', q.caps, ''),
    ...(q.boots ?? []).map(b => ({what: 'Pipe boot', size: `for a pipe of ${u.small(b.diameterM)}`, net: '', buy: b.count})),
    ...(q.curbs ?? []).map(c => ({what: 'Curb', size: `${u.small(c.widthM)} × ${u.small(c.depthM)}`, net: '', buy: c.count})),
    q.plugs?.pieces > 0 && pieces('Plugs', q.plugs,
      `${u.count(q.plugs.seamEnds)} at seam terminations, ${u.count(q.plugs.corners)} in corners`)];
}

function panels(q, system) {
  const pans = q.panelSum;
  if (!(pans?.count > 0)) return [];
  return [{what: 'Panels', size: textOf(system.panel?.coverage ?? system.panelCoverage) + ' coverage',
    net: [times(pans.count, 'panel'), u.run(pans.lengthM)], gross: '', buy: u.count(pans.count),
    how: [`${u.area(pans.areaM2)} of sheet as cut`]}];
}
