/**
 * A takeoff in, documents out: JSON for programs, CSV for spreadsheets, human-readable text, drawings as SVG. Here is the entry of each;
 * the packages below have their parts. Writers are pure functions of the takeoff: the same takeoff gives the same bytes, always UTF-8, with
 * no clock and no locale in them.
 */
package org.seamledger.export;
