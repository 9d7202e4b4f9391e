/**
 * Roof faces and their neighbours in, junction lines with measured facts out. Pure geometry: no trade name is decided here.
 * {@link org.seamledger.junction.FactList#LINE} lists the facts of a line, all that the rules of kinds see, with how each is measured.
 */
package org.seamledger.junction;
