/** Reads a roof from its building model and says what seals each of its junctions. */
package org.seamledger;
