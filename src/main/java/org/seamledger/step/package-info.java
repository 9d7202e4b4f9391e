/**
 * Exchange structures of ISO 10303-21 ("STEP files"): bytes to header, instances by id and typed parameters.
 *
 * <p>Input: any bytes. Output: a {@link org.seamledger.step.StepFile}, or one
 * {@link org.seamledger.finding.UnreadableModelException} that names line, column, what was expected and what was found.
 *
 * <p>How it works:
 * <ol>
 * <li>{@link org.seamledger.step.IndexPass} reads the bytes once, front to back. It hashes them and notes where each instance starts
 * and what its keyword is. It looks at the inside of an instance only as far as is needed to find its end: strings, comments, the
 * semicolon.</li>
 * <li>{@link org.seamledger.step.RecordIndex} keeps that in primitive arrays, mostly five bytes an instance, and finds ids in them.</li>
 * <li>{@link org.seamledger.step.ParameterReader} decodes an instance when it is needed; only then is its inside judged.</li>
 * </ol>
 */
package org.seamledger.step;
