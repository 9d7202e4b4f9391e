/**
 * The parts of a roof system, as records of measures: what a file of the system may state. {@link org.seamledger.quantity.system.Range}
 * says what a value may be, names of components are names of fields.
 */
package org.seamledger.quantity.system;
