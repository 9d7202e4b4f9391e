// What seals a junction decides how it is drawn: colour, width and dashes each tell the classes apart by themselves.
// The colours are those of Okabe and Ito's palette, chosen so that they can be told apart with any kind of colour vision.

/** Classes of junctions by what seals them, as they are listed. */
export const SEALS = {
  'tape-bead': {text: 'Tape, concealed bead', colour: '#0072b2', width: 4, dash: null},
  'tape': {text: 'Tape only', colour: '#009e73', width: 3, dash: [14, 5]},
  'exposed': {text: 'With exposed bead', colour: '#d55e00', width: 5, dash: [6, 4]},
  'bead': {text: 'Bead only', colour: '#b8609a', width: 4, dash: [3, 4]},
  'in-seam': {text: 'Seam sealant', colour: '#2f9fd0', width: 3, dash: [20, 4]},
  'metal': {text: 'Metal only, no sealant', colour: '#6b747b', width: 2, dash: null},
  'none': {text: 'Nothing decided yet', colour: '#c98a00', width: 4, dash: [8, 6]},
};

/** The class of a junction, from its seals and metal. */
export function sealClass(j) {
  const seals = j.seals ?? [];
  const forms = new Set(seals.map(x => x.form));
  if (seals.some(x => x.form === 'bead' && x.exposure === 'exposed')) return 'exposed';
  if (forms.has('tape')) return forms.has('bead') ? 'tape-bead' : 'tape';
  if (forms.has('bead')) return 'bead';
  if (forms.has('in-seam')) return 'in-seam';
  return j.kind === 'unclassified' || !j.metalParts ? 'none' : 'metal';
}

/** What kinds are called, by id, in the order in which they are listed: the result says it, as its rules do. */
export const KINDS = {};

/**
 * Takes the kinds of a result. One that an earlier version of the program stored has none: its kinds are then called by their ids.
 * @param {import('../types.js').Kind[]} [kinds]
 * @param {{kind: string}[]} junctions
 */
export function takeKinds(kinds, junctions = []) {
  Object.keys(KINDS).forEach(id => delete KINDS[id]);
  for (const k of kinds ?? junctions.map(j => ({id: j.kind, label: j.kind.replaceAll('-', ' ')}))) {
    KINDS[k.id] = k.label[0].toUpperCase() + k.label.slice(1);
  }
}

export const kindText = kind => KINDS[kind] ?? kind;

export const REVIEW = {
  open: {text: 'Not looked at', sign: '○'},
  checked: {text: 'Checked', sign: '●'},
  question: {text: 'Question', sign: '?'},
  recheck: {text: 'Check again: it changed', sign: '◐'},
};

export const SEVERITY = {
  violation: {text: 'Violation', sign: '■'},
  warning: {text: 'Warning', sign: '▲'},
  info: {text: 'Note', sign: '·'},
};
