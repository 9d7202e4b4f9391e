/**
 * Loads the rules in {@code shapes/} and runs them over graphs; its results are plain words and numbers.
 *
 * <p>A rule is a SHACL node shape that says what it is for: {@code sl:kind "ridge"} on a shape of {@code kinds.ttl}, for example. A thing
 * gets the word of the shape that it conforms to. Only SHACL Core is used, so that nothing of a query engine has to be started. A file
 * that can't be read, or that requires a fact nobody measures, is refused with its line: see
 * {@link org.seamledger.shacl.BrokenRulesException}.
 */
package org.seamledger.shacl;
