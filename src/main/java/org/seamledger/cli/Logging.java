package org.seamledger.cli;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.encoder.PatternLayoutEncoder;
import ch.qos.logback.classic.spi.Configurator;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.ConsoleAppender;
import ch.qos.logback.core.spi.ContextAwareBase;
import java.nio.charset.StandardCharsets;

/**
 * Logging of the libraries: warnings, one line each, on standard error, since standard output belongs to results. In code, for a
 * configuration file would cost a fifth of a second at every start. {@code SEAMLEDGER_LOG} sets another level, such as {@code info}.
 */
public final class Logging extends ContextAwareBase implements Configurator {

  @Override
  public ExecutionStatus configure(LoggerContext context) {
    PatternLayoutEncoder encoder = new PatternLayoutEncoder();
    encoder.setContext(context);
    encoder.setCharset(StandardCharsets.UTF_8);
    encoder.setPattern("seamledger: %level %logger{0}: %msg%n%nopex");
    encoder.start();
    ConsoleAppender<ILoggingEvent> console = new ConsoleAppender<>();
    console.setContext(context);
    console.setTarget("System.err");
    console.setEncoder(encoder);
    console.start();
    Logger root = context.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
    root.setLevel(Level.toLevel(System.getenv("SEAMLEDGER_LOG"), Level.WARN));
    root.addAppender(console);
    return ExecutionStatus.DO_NOT_INVOKE_NEXT_IF_ANY;
  }
}
