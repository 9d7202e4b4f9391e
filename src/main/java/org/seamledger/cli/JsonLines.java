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
import java.util.Map;
import org.seamledger.watch.Event;
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
          write(json, pair.key, pair.value);
        }
      }
      writeEvents(json, event);
      if (event.getThrowableProxy() != null) {
        json.writeStringField("trace", traces.convert(event));
      }
      json.writeEndObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return line.append('\n').toString().getBytes(StandardCharsets.UTF_8);
  }

  /** What a watch tells is one line for people; programs get its parts. */
  private static void writeEvents(JsonGenerator json, ILoggingEvent event) throws IOException {
    Object[] arguments = event.getArgumentArray();
    if (arguments != null && arguments.length == 1 && arguments[0] instanceof Event told) {
      for (Map.Entry<String, Object> field : told.fields().entrySet()) {
        write(json, field.getKey(), field.getValue());
      }
    }
  }

  private static void write(JsonGenerator json, String key, Object value) throws IOException {
    json.writeFieldName(key);
    if (value instanceof Integer || value instanceof Long) {
      json.writeNumber(((Number) value).longValue());
    } else if (value instanceof Number number) {
      json.writeNumber(number.doubleValue());
    } else {
      json.writeString(String.valueOf(value));
    }
  }
}
