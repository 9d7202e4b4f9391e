/**
 * The physics that decides whether a junction holds: heat, water, air, time and metals. Pure functions in SI units (temperatures in °C
 * where the name says so); each names its equation and source. All of it is an estimate for a person who designs, no design.
 */
package org.seamledger.quantity.physics;
