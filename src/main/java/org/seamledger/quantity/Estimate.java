package org.seamledger.quantity;

/**
 * A figure of physics that a design should know, for people.
 *
 * @param topic {@code movement}, {@code water}, {@code wind}, {@code weather}, {@code sealant} or {@code metals}
 * @param name what it is
 * @param value with its unit
 * @param basis the equation, the inputs in force and where they come from
 */
public record Estimate(String topic, String name, String value, String basis) {
}
