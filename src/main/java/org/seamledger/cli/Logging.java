package org.seamledger.cli;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.encoder.PatternLayoutEncoder;
import ch.qos.logback.classic.spi.Configurator;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.LoggingEvent;
import ch.qos.logback.core.OutputStreamAppender;
import ch.qos.logback.core.encoder.Encoder;
import ch.qos.logback.core.ConsoleAppender;
import ch.qos.logback.core.spi.ContextAwareBase;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.seamledger.watch.Event;
import org.seamledger.watch.Watching;
import org.slf4j.LoggerFactory;

/**
 * Logging, on standard error, since standard output belongs to results. In code, for a configuration file would cost a fifth of a second
 * at every start. {@code SEAMLEDGER_LOG} sets another level, such as {@code info}; below that the libraries don't follow, for they log
 * requests with all their headers, the token among them.
 */
public final class Logging extends ContextAwareBase implements Configurator {

  /** Warnings of the libraries, one line each: whoever runs a command once gets no traces. */
  private static final String ONE_LINE = "seamledger: %level %logger{0}: %msg%n%nopex";
  /** Only a line that begins with a time is an event: what else a message or trace brings with it is indented. */
  private static final String SERVICE =
      "%d{\"yyyy-MM-dd'T'HH:mm:ss.SSSX\", UTC} %-5level %logger{0}: %replace(%replace(%msg){'\\s*[\\r\\n]+\\s*', ' '}"
          + " %kvp){' $', ''}%n"
          + "%replace(%ex){'(?m)^', '    '}%nopex";

  private static final List<String> CLIENTS_FAULTS = List.of("org.eclipse.jetty.http.HttpParser", "org.eclipse.jetty.util.HostPort");

  @Override
  public ExecutionStatus configure(LoggerContext context) {
    ConsoleAppender<ILoggingEvent> console = new ConsoleAppender<>();
    console.setTarget("System.err");
    write(context, console, pattern(context, ONE_LINE));
    Level asked = level(Level.WARN);
    context.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME).setLevel(asked.isGreaterOrEqual(Level.INFO) ? asked : Level.INFO);
    context.getLogger("org.seamledger").setLevel(asked.isGreaterOrEqual(Level.INFO) ? null : asked);
    // What the query's parser finds odd about a query is its author's business: who can't ask it is told why.
    context.getLogger("SPARQL").setLevel(Level.ERROR);
    return ExecutionStatus.DO_NOT_INVOKE_NEXT_IF_ANY;
  }

  /** From now on logs as a service does: every request and analysis, failures with their traces. */
  static void asService(LogForm form, OutputStream err) {
    LoggerContext context = (LoggerContext) LoggerFactory.getILoggerFactory();
    OutputStreamAppender<ILoggingEvent> stream = new OutputStreamAppender<>();
    // The stream is the process's own and is not the appender's to close.
    stream.setOutputStream(new Unclosable(err));
    write(context, stream, form == LogForm.json ? new JsonLines() : pattern(context, SERVICE));
    context.getLogger("org.seamledger").setLevel(level(Level.INFO));
    // What is wrong with a request is in its answer; a line in the log for each would be a way to fill disks without a token.
    // What the queue's library warns of, a ticket that was given back, is told by who gave it back.
    context.getLogger("com.github.kagkarlsson").setLevel(Level.ERROR);
    CLIENTS_FAULTS.forEach(name -> context.getLogger(name).setLevel(Level.ERROR));
  }

  /** Writes what a watch tells into the service's log, with the watch's own time. */
  static void tell(Event event) {
    Logger logger = (Logger) LoggerFactory.getLogger(Watching.class);
    LoggingEvent entry = new LoggingEvent(Logging.class.getName(), logger, Level.INFO, "watch {}", null, new Object[] {event});
    entry.setInstant(event.at());
    logger.callAppenders(entry);
  }

  /** Notes a thread that ended by what nobody caught. */
  static void unexpectedEnd(String thread, Throwable cause) {
    LoggerFactory.getLogger(Logging.class).atError().addKeyValue("thread", thread).setCause(cause)
        .log("unexpected end of a thread: {}", String.valueOf(cause));
  }

  /** Back to what {@link #configure} set. */
  static void asCommand() {
    LoggerContext context = (LoggerContext) LoggerFactory.getILoggerFactory();
    new Logging().configure(context);
  }

  private static Level level(Level otherwise) {
    return Level.toLevel(System.getenv("SEAMLEDGER_LOG"), otherwise);
  }

  private static PatternLayoutEncoder pattern(LoggerContext context, String pattern) {
    PatternLayoutEncoder encoder = new PatternLayoutEncoder();
    encoder.setContext(context);
    encoder.setCharset(StandardCharsets.UTF_8);
    encoder.setPattern(pattern);
    return encoder;
  }

  private static void write(LoggerContext context, OutputStreamAppender<ILoggingEvent> to, Encoder<ILoggingEvent> encoder) {
    encoder.setContext(context);
    encoder.start();
    to.setContext(context);
    to.setEncoder(encoder);
    to.start();
    Logger root = context.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
    root.detachAndStopAllAppenders();
    root.addAppender(to);
  }

  private static final class Unclosable extends FilterOutputStream {
    Unclosable(OutputStream out) {
      super(out);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
      out.write(bytes, from, length);
    }

    @Override
    public void close() throws IOException {
      flush();
    }
  }
}
