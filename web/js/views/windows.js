// Sealing windows as a picture of cells: a row for each class of sealant, an hour a cell.

import {h, scrolling} from '../dom.js';
import {written} from '../units/written.js';

const CLASSES = [['tape', 'Tape'], ['bead', 'Beads'], ['in-seam', 'In seams, laps']];
const WHY = {rain: ['R', 'rain'], 'rain-soon': ['S', 'rain before it has a skin'], dew: ['D', 'metal too near the dew point'],
  'cold-metal': ['C', 'metal too cold'], 'cold-air': ['C', 'air too cold'], 'hot-metal': ['H', 'metal too hot'],
  'hot-air': ['H', 'air too hot'], humid: ['W', 'air too humid'], unknown: ['?', 'no data']};
const UPRIGHT = {stands: 'By its data sheet an upright bead of this size stands.',
  slumps: 'By its data sheet an upright bead of this size slumps.',
  'not-stated': 'The data sheet states no yield stress: look again at upright beads before they are covered.'};

/** @param {object} weather of the service's sequence */
export function windows(weather) {
  const days = new Map();
  for (const hour of weather.hours) {
    const date = weather.byHand ? 'now' : hour.time.slice(0, 5);
    days.set(date, [...days.get(date) ?? [], hour]);
  }
  return [h('h3', {}, `Sealing windows, weather ${weather.byHand ? '' : 'from '}${weather.source}`), h('p', {}, UPRIGHT[weather.upright]),
    weather.byHand ? now(weather.hours[0]) : [...days].map(([date, hours]) => day(date, hours)),
    h('p', {class: 'quiet'}, '✓ may be applied · ', [...new Set(Object.values(WHY).map(w => w[0]))].map(letter =>
      `${letter} ${Object.values(WHY).filter(w => w[0] === letter).map(w => w[1]).join(' or ')}`).join(' · '), '.')];
}

const degrees = value => value === null ? 'not known' : written(`${value.toFixed(1)} °C`);
const after = value => value === null ? 'later than the weather that is known' : `after ${value.toFixed(1)} h`;

function now(hour) {
  return h('ul', {}, h('li', {}, `Air ${degrees(hour.airC)}, dew point ${degrees(hour.dewPointC)}, metal ${degrees(hour.metalC)}`),
    CLASSES.map(([id, text]) => h('li', {}, h('b', {}, `${text}: `), hour['against-' + id].length === 0 ? 'may be applied'
      : `not now: ${hour['against-' + id].map(w => WHY[w][1]).join(', ')}`)),
    h('li', {}, `A bead gunned now: skin ${after(hour.skinHours)}, looked at and covered ${after(hour.coverHours)}, `
      + 'if the weather stays'));
}

function day(date, list) {
  const low = Math.min(...list.map(x => x.metalC ?? Infinity)), high = Math.max(...list.map(x => x.metalC ?? -Infinity));
  const first = list.find(x => x['against-bead'].length === 0);
  return h('div', {class: 'windows-day'}, h('p', {}, h('b', {}, date), written(` metal ${low.toFixed(0)} °C to ${high.toFixed(0)} °C`),
    first && `; a bead gunned at ${first.time.slice(6)} has a skin ${after(first.skinHours)} `
      + `and is covered ${after(first.coverHours)}`),
  scrolling(`Windows of ${date}`, h('table', {class: 'windows'}, h('thead', {}, h('tr', {}, h('th', {scope: 'col'}, 'Hour'),
    list.map(x => h('th', {scope: 'col'}, x.time.slice(6, 8))))), h('tbody', {}, CLASSES.map(([id, text]) => h('tr', {},
    h('th', {scope: 'row'}, text), list.map(x => cell(x, id))))))));
}

function cell(hour, id) {
  const against = hour['against-' + id];
  const why = against.length === 0 ? 'may be applied' : against.map(w => WHY[w][1]).join(', ');
  const title = `${hour.time}: ${why}; metal ${degrees(hour.metalC)}`;
  return h('td', {class: against.length === 0 ? 'open' : 'shut', title}, against.length === 0 ? '✓' : WHY[against[0]][0]);
}
