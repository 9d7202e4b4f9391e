/**
 * A sheet of paper as SVG: elements in millimetres go in, a document of text comes out, the same for the same elements.
 */
package org.seamledger.export.sheet;
