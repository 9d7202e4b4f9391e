/**
 * What the program has to say about a model or a design: coded findings with their severity and what they concern, errors that end a
 * run, and what
 * messages and ids need: the nearest word to a wrong one, and hashes. Imports nothing, so every room can report.
 */
package org.seamledger.finding;
