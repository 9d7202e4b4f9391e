package org.seamledger.geometry;

/**
 * On which side of a plane a section is taken. A section in a plane that holds a face of the solid is ambiguous; taken
 * infinitesimally to one side it is not, and its outline is still exact.
 */
public enum SectionSide {
  /** Just below: against the plane's normal. */
  BELOW,
  /** Just above: on the side the normal points to. */
  ABOVE
}
