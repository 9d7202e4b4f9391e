// What is to be done on a day: the plan of days of the order of work, which is an estimate; the crew says which day it is.

import {h} from '../dom.js';
import {nameOf, partOf} from './names.js';
import {open, places, standingOf} from './roof.js';
import {STAGE, capital} from './words.js';

const KEY = 'seamledger.roof-day';

/** The day that was chosen for this roof, from 1; without one, the last of which something was said. */
export function today() {
  const chosen = Number(localStorage.getItem(`${KEY} ${open.roof.key}`)), last = open.days.length;
  if (chosen >= 1 && chosen <= last) return chosen;
  const said = new Set([...(open.record?.places ?? []).filter(p => p.events.length).map(p => p.id), ...open.own.map(e => e.event.place)]);
  return 1 + Math.max(0, open.days.findLastIndex(d => d.tasks.some(t => t.ends && said.has(t.place))));
}

export const tasksToday = () => open.days?.[today() - 1]?.tasks ?? [];

/** @param {(place: object) => void} go opens a place @param {() => void} again draws anew */
export function dayPlan(go, again) {
  if (!open.days?.length) return null;
  const day = today(), {tasks, carryUp} = open.days[day - 1], last = open.days.length;
  const turn = by => {
    localStorage.setItem(`${KEY} ${open.roof.key}`, String(day + by));
    again();
  };
  const arrow = (text, words, by) => h('button', {class: 'big', 'aria-label': words, disabled: day + by < 1 || day + by > last,
    on: {click: () => turn(by)}}, text);
  const works = [...new Set(tasks.map(t => t.label))];
  return h('section', {class: 'day', 'aria-label': 'Work of a day'},
    h('div', {class: 'day-head'}, arrow('‹', 'The day before', -1), h('h2', {}, `Day ${day} `, h('small', {}, `of ${last}`)),
      arrow('›', 'The next day', 1)),
    carryUp.length > 0 && h('details', {}, h('summary', {}, 'Carry up today'),
      h('ul', {}, carryUp.map(c => h('li', {}, `${c.amount} ${c.what}`)))),
    works.map(w => work(tasks.filter(t => t.label === w), go)));
}

/** The same work at several places: said once. */
function work(tasks, go) {
  const row = t => {
    const place = places().find(p => p.id === t.place), words = [nameOf(t.place), !t.ends && h('small', {}, ', continues the next day')];
    return h('li', {}, place ? h('button', {class: 'place-row', on: {click: () => go(place)}},
      h('span', {class: 'sign', 'aria-hidden': 'true'}, STAGE[standingOf(place).stage].sign),
      h('span', {}, h('b', {}, words), ' ', h('small', {}, partOf(place.id)))) : h('p', {class: 'day-face'}, words));
  };
  return h('div', {}, h('h3', {}, capital(tasks[0].label)), h('p', {}, tasks[0].does), h('ul', {class: 'places'}, tasks.map(row)));
}
