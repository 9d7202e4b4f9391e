/**
 * Instances as the schemas describe them: {@link org.seamledger.ifc.entity.Entity} gives attributes by name, lengths in metres and angles
 * in radians, whatever the schema and the units of the file. What is wrong with an instance is a {@link
 * org.seamledger.ifc.entity.EntityProblem}, which whoever reads an element turns into a finding.
 */
package org.seamledger.ifc.entity;
