// How the work on the roof stands, in words, and what of it is open first.

/** From what needs somebody to what is done. */
export const STAGES = {
  conflict: 'Two people disagree', failed: 'Something is wrong', recheck: 'Changed since it was signed off', begun: 'Begun',
  open: 'Not begun', checked: 'Looked at', signed: 'Signed off',
};
const ORDER = Object.keys(STAGES);

/** Places with something to look at or something said, what needs somebody first. */
export const inOrder = site => site.places.filter(p => p.items.length || p.events.length)
  .sort((a, b) => ORDER.indexOf(a.stage) - ORDER.indexOf(b.stage) || b.lengthM - a.lengthM);

/** Length of all lines by how they stand, metres. */
export function lengths(site) {
  const sum = Object.fromEntries(ORDER.map(stage => [stage, 0]));
  for (const p of site.places) sum[p.stage] += p.lengthM;
  return sum;
}

/** How many hold points are settled, of how many; steps, whose id is a place and a plain word, are none. */
export function points(place) {
  const all = place.items.filter(i => !i.isStep);
  return {all: all.length, settled: all.filter(i => ['ticked', 'deviates'].includes(i.standing)).length};
}
