package org.seamledger.cli;

import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.util.LogbackMDCAdapter;
import org.slf4j.ILoggerFactory;
import org.slf4j.IMarkerFactory;
import org.slf4j.helpers.BasicMarkerFactory;
import org.slf4j.spi.MDCAdapter;
import org.slf4j.spi.SLF4JServiceProvider;

/**
 * Starts the logging library with this program's own settings. Its own start would look in every library for what else might configure
 * it, at each start of the program.
 */
public final class LogProvider implements SLF4JServiceProvider {

  private final LoggerContext context = new LoggerContext();
  private final IMarkerFactory markers = new BasicMarkerFactory();
  private final LogbackMDCAdapter words = new LogbackMDCAdapter();

  /** To be called before anything logs: else the logging interface looks in every library, too. */
  static void install() {
    System.setProperty("slf4j.provider", LogProvider.class.getName());
    // That one is named, and which, is no news.
    System.setProperty("slf4j.internal.verbosity", "WARN");
  }

  @Override
  public void initialize() {
    context.setName("default");
    context.setMDCAdapter(words);
    new Logging().configure(context);
    context.start();
  }

  @Override
  public ILoggerFactory getLoggerFactory() {
    return context;
  }

  @Override
  public IMarkerFactory getMarkerFactory() {
    return markers;
  }

  @Override
  public MDCAdapter getMDCAdapter() {
    return words;
  }

  @Override
  public String getRequestedApiVersion() {
    return "2.0.99";
  }
}
