// Names of facts, as rules use them, in words.

import {words} from '../units.js';

const UNITS = [[/Degrees$/, '°'], [/M2$/, 'm²'], [/M$/, 'm'], [/Lps$/, 'l/s'], [/Pa$/, 'Pa'], [/K$/, 'K'], [/C$/, '°C']];

/** The unit that numbers of a fact are written in; empty where they have none. */
export const unitOf = fact => UNITS.find(([pattern]) => pattern.test(fact))?.[1] ?? '';

export const factName = fact => words(fact.replace(/(Lps|Pa|K|C)$/, '')).toLowerCase();

const HELD = /\b([a-z]+[A-Z]\w*)( (?:at least|at most|above|below) )?(-?[\d.]+)?/g;

/** A fact that is yes or no. */
const FLAG = /needs ([^;]+?) (?:true|false); \1 is (true|false)/g;

/** What a shape requires, with names of facts as words and numbers with the unit of their fact. */
export const inWords = text => text.replace(HELD, (all, fact, how, value) =>
  `${factName(fact)}${how ?? ''}${value ?? ''}${how && value ? unitBehind(fact) : ''}`.trim()).replace(FLAG, 'needs $1, which is $2 here');
const unitBehind = fact => unitOf(fact).replace(/^(?!°$)(?=.)/, ' ');
