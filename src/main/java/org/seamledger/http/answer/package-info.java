/**
 * What goes out: JSON, files of the page, and whatever went wrong, as one sort of answer; names that came from outside are cleaned here.
 */
package org.seamledger.http.answer;
