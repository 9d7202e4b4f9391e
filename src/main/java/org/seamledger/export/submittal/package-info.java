/**
 * The submittal as PDF: a takeoff and what its sheets are to say go in; PDF/A-3b that is PDF/UA-1 as well comes out, the same bytes for the
 * same takeoff and setup. Words and tables are XSL-FO, drawings are the program's own SVG, set as vectors. Only this package knows the
 * formatter, and nothing of it is loaded before a PDF is asked for.
 */
package org.seamledger.export.submittal;
