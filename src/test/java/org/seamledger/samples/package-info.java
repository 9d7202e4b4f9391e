/**
 * Roofs described in the trade's words, written as IFC text, with the ledger that each must give.
 *
 * <p>{@link org.seamledger.samples.Roofs} and its siblings build a {@link org.seamledger.samples.House}: roof planes given by their plan
 * outline and slope, walls, things that stand in the roof, and the expected junction lines, each length worked out in closed form
 * from the parameters (never read off the outlines, and never copied from the program's output).
 * {@link org.seamledger.samples.IfcWriter} writes a house in the {@link org.seamledger.samples.Form} that is asked for: schema, length
 * unit, representation, element form, place, turn, mirror, order of instances. {@link org.seamledger.samples.Estate} writes the demo
 * buildings in {@code ifc-samples/}.
 *
 * <p>Lengths are metres, Z is up. Everything is a function of its parameters: same house, same form, same bytes.
 */
package org.seamledger.samples;
