package org.seamledger.source;

/**
 * A document that is left with a revision.
 *
 * @param title what people see, such as {@code seamledger r0005 ledger.json}
 * @param mediaType such as {@code application/json}
 * @param content its bytes; not copied
 */
public record Attachment(String title, String mediaType, byte[] content) {
}
