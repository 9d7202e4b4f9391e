// What a sheet needs beside the roof: north and scale, on the screen and on paper.

import {h, put, s} from '../dom.js';
import {state} from '../state.js';

const SCREEN_PX_M = 0.0254 / 96;
const RATIOS = [50, 100, 200, 250, 500, 1000, 2000, 5000];
/** The drawing on paper, and the part of it that the roof may fill, in metres. */
const PAPER = {wide: 0.18, high: 0.15, roofWide: 0.17, roofHigh: 0.13};

export function northMark() {
  return s('svg', {class: 'north', viewBox: '-12 -16 24 32', role: 'img', 'aria-label': 'North is up (the model’s +Y)'},
    s('path', {d: 'M0 -13 5 6 0 3 -5 6Z'}), s('text', {y: 15, 'text-anchor': 'middle', 'font-size': 9}, 'N'));
}

/**
 * A bar of a round length, and the ratio at which a screen of 96 dots an inch shows it.
 * @param {number} perPx metres
 * @param {number} [exact] the ratio, where it is known
 */
export function drawScale(root, perPx, exact) {
  const foot = state.units === 'us' ? 0.3048 : 1;
  const aim = 90 * perPx / foot, power = 10 ** Math.floor(Math.log10(aim));
  const round = [5, 2, 1].find(k => k * power <= aim) * power;
  const ratio = perPx / SCREEN_PX_M;
  put(root, h('span', {class: 'bar', style: {width: round * foot / perPx + 'px'}}),
    h('span', {}, `${round >= 1 ? round : round.toPrecision(1)} ${foot === 1 ? 'm' : 'ft'}`),
    h('small', {}, exact ? `1:${exact}` : `about 1:${ratio >= 10 ? Math.round(ratio / 5) * 5 : ratio.toFixed(1)}`));
}

/** A round scale at which the roof fits the sheet, so that one can measure on paper. */
export function onPaper(root, svg, scale, look) {
  addEventListener('beforeprint', () => {
    if (!root.isConnected || !state.ledger) return;
    const {lo, hi} = state.ledger.box, least = Math.max((hi[0] - lo[0]) / PAPER.roofWide, (hi[1] - lo[1]) / PAPER.roofHigh);
    const ratio = RATIOS.find(r => r >= least) ?? Math.ceil(least / 5000) * 5000;
    const wide = PAPER.wide * ratio, high = PAPER.high * ratio;
    svg.setAttribute('viewBox', `${(lo[0] + hi[0]) / 2 - wide / 2} ${-(lo[1] + hi[1]) / 2 - high / 2} ${wide} ${high}`);
    svg.style.width = '180mm';
    drawScale(scale, ratio * SCREEN_PX_M, ratio);
  });
  addEventListener('afterprint', () => {
    svg.style.width = '';
    look();
  });
}
