// Words and numbers as the page on the roof shows them.

const FT = 0.3048, IN = 0.0254;
let us = false;
try { us = localStorage.getItem('seamledger.units') === 'us'; } catch { /* private windows keep nothing */ }

/** A length, to the centimetre or the inch. */
export function length(m) {
  if (!Number.isFinite(m)) return '';
  const inches = Math.round(m / IN);
  return us ? `${Math.floor(inches / 12)}′ ${inches % 12}″` : `${m.toFixed(2)} m`;
}

/** A sum of lengths. */
export const run = m => us ? `${(m / FT).toFixed(0)} ft` : `${m.toFixed(1)} m`;
export const small = m => us ? `${(m / IN).toFixed(1)} in` : `${Math.round(m * 1000)} mm`;
export const capital = text => text.charAt(0).toUpperCase() + text.slice(1);

const CLOCK = new Intl.DateTimeFormat('en-GB', {day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit'});
export const when = at => Number.isNaN(Date.parse(at)) ? at : CLOCK.format(new Date(at));

/** How a place stands: words and a sign that does without colour. */
export const STAGE = {
  open: {text: 'Not begun', sign: '○'},
  begun: {text: 'Begun', sign: '◐'},
  failed: {text: 'Something is wrong', sign: '✕'},
  conflict: {text: 'Two people disagree', sign: '≠'},
  checked: {text: 'Looked at', sign: '●'},
  signed: {text: 'Signed off', sign: '✔'},
  recheck: {text: 'Changed since it was signed off', sign: '↻'},
};

export const SAID = {
  tick: 'ticked', untick: 'opened again', failure: 'not good', deviation: 'deviation', photo: 'photo', weather: 'weather',
  lot: 'sealant lot', note: 'note', 'sign-off': 'signed off', withdrawal: 'took the sign-off back',
};
