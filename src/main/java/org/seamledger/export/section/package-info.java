/**
 * Section drawings through details. In goes a junction with its detail and the roof system; out comes a
 * {@link org.seamledger.export.section.SectionScene}: outlines of sheets, seals and screws in millimetres at full size, in the plane square
 * to the line. {@link org.seamledger.export.section.SectionFamilies} says which composition shows which kind.
 */
package org.seamledger.export.section;
