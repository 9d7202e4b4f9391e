package org.seamledger.cli;

/** How a server writes its log. */
enum LogForm {
  /** Lines for people, with {@code key="value"} behind the message. */
  text,
  /** One JSON object a line. */
  json
}
