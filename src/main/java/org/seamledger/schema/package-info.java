/**
 * What the three IFC schemas say of their classes: supertypes, attributes in their order, and the types of values. Read from tables that
 * {@code SchemaTablesTest} derives from the EXPRESS schemas; names, order and types only, no text of the standard.
 */
package org.seamledger.schema;
