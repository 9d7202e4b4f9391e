// What went wrong inside the page itself: said, instead of a button that does nothing.

import {h, put} from '../dom.js';
import {set, state, watch} from '../state.js';

/** A browser's notice that sizes changed while they were being told of; nothing is lost by it. */
const HARMLESS = /ResizeObserver loop/;

export function mountProblem(root) {
  const draw = () => put(root, state.problem && h('p', {class: 'trouble', role: 'alert'},
    `Something on this page did not work: ${state.problem}`, ' ',
    h('button', {on: {click: () => location.reload()}}, 'Load the page again'), ' ',
    h('button', {on: {click: () => set({problem: null})}}, 'Close')));
  watch(['problem'], draw);
  addEventListener('unhandledrejection', e => set({problem: e.reason?.message ?? String(e.reason)}));
  addEventListener('error', e => {
    if (e.message && !HARMLESS.test(e.message)) set({problem: e.message});
  });
}
