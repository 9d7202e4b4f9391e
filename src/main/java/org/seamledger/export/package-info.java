/**
 * A takeoff in, documents out: JSON for programs, CSV for spreadsheets, text for people. Writers are pure functions of the takeoff:
 * the same takeoff gives the same bytes, always UTF-8, with no clock and no locale in them.
 */
package org.seamledger.export;
