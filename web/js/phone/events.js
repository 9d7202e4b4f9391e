// What users say of a place, each with what it asks for first.

import {say as announce} from '../dom.js';
import {ask} from './ask.js';
import {nameOf} from './names.js';
import {say} from './queue.js';
import {changed, open} from './roof.js';
import * as shelf from './shelf.js';

/** Asks once who holds the telephone: nothing is said without a name. */
export async function named() {
  if (open.name) return true;
  const answer = await ask('Who are you?', [{name: 'name', label: 'Your name, as it shall stand in the record'}], 'That\'s me');
  if (!answer?.name) return false;
  await rename(answer.name);
  return true;
}

export async function rename(name) {
  open.name = name.slice(0, 100);
  await shelf.keep('name', open.name);
  changed();
}

async function put(kind, place, more) {
  if (!await named()) return;
  try {
    await say(kind, place, more);
    announce('Kept on this telephone.');
  } catch (e) {
    alert(e.message);
  }
}

export const tick = (place, item) => put('tick', place.id, {point: item.id});
export const untick = (place, item) => put('untick', place.id, {point: item.id});

async function withWords(kind, place, more, title, label, value) {
  if (!await named()) return;
  const answer = await ask(title, [{name: 'text', label, rows: 4, value}]);
  if (answer?.text) await put(kind, place?.id ?? '', {...more, text: answer.text});
}

export const fail = (place, item) => withWords('failure', place, {point: item.id}, 'Not as it should be',
  `What is wrong, and what was done?${item.ifFails ? ' ' + item.ifFails : ''}`);
export const deviate = (place, item) => withWords('deviation', place, item ? {point: item.id} : {}, 'Deviation from the detail',
  'What was done instead, and for what reason?');
export const note = place => withWords('note', place, {}, 'Note', 'What should be known?');
export const weather = () => withWords('weather', null, {}, 'Weather', 'Sky, air and metal temperature, wind, humidity');

export async function lot(place) {
  if (!await named()) return;
  const answer = await ask('Sealant', [{name: 'product', label: 'Product'},
    {name: 'lot', label: 'Lot number, as on the cartridge or roll'}]);
  if (answer?.product) await put('lot', place?.id ?? '', {text: `${answer.product}, lot ${answer.lot}`});
}

export async function signOff(place) {
  if (!await named()) return;
  const answer = await ask(`Sign off ${nameOf(place.id)}`, [{name: 'sure', tick: true,
    label: `I, ${open.name}, looked at it, and answer for it as it is now.`}], 'Sign off');
  if (answer?.sure) await put('sign-off', place.id, {});
}

export const withdraw = place => put('withdrawal', place.id, {});
export const photograph = (place, item, photo, withPlace) => put('photo', place?.id ?? '', {point: item?.id ?? '', photo, withPlace});
