package org.seamledger.cli;

import ch.qos.logback.classic.pattern.ThrowableProxyConverter;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.encoder.EncoderBase;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.slf4j.event.KeyValuePair;

/** A log event as one JSON object on one line: time, level, logger, message, the event's own keys, and the trace of a failure. */
final class JsonLines extends EncoderBase<ILoggingEvent> {

  private static final JsonFactory FACTORY = new JsonFactory();

  private final ThrowableProxyConverter traces = new ThrowableProxyConverter();

  @Override
  public void start() {
    traces.start();
    super.start();
  }

  @Override
  public byte[] headerBytes() {
    return new byte[0];
  }

  @Override
  public byte[] footerBytes() {
    return new byte[0];
  }

  @Override
  public byte[] encode(ILoggingEvent event) {
    StringWriter line = new StringWriter();
    try (JsonGenerator json = FACTORY.createGenerator(line)) {
      json.writeStartObject();
      json.writeStringField("time", event.getInstant().toString());
      json.writeStringField("level", event.getLevel().toString());
      json.writeStringField("logger", event.getLoggerName());
      json.writeStringField("message", event.getFormattedMessage());
      if (event.getKeyValuePairs() != null) {
        for (KeyValuePair pair : event.getKeyValuePairs()) {
          write(json, pair);
        }
      }
      if (event.getThrowableProxy() != null) {
        json.writeStringField("trace", traces.convert(event));
      }
      json.writeEndObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return line.append('\n').toString().getBytes(StandardCharsets.UTF_8);
  }

  private static void write(JsonGenerator json, KeyValuePair pair) throws IOException {
    json.writeFieldName(pair.key);
    if (pair.value instanceof Integer || pair.value instanceof Long) {
      json.writeNumber(((Number) pair.value).longValue());
    } else if (pair.value instanceof Number number) {
      json.writeNumber(number.doubleValue());
    } else {
      json.writeString(String.valueOf(pair.value));
    }
  }
}
