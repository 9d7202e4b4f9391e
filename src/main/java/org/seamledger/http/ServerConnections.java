package org.seamledger.http;

import java.time.Duration;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Function;
import org.seamledger.source.ModelServer;
import org.seamledger.source.ModelServerException;
import org.seamledger.watch.Servers;

/**
 * Asks servers of models while a client waits for the answer. A few at once, and none for long: a server that is slow or dead costs the
 * threads here and not those that answer everybody else. Only servers on the operator's list are asked, by their names.
 */
final class ServerConnections implements AutoCloseable {

  private static final int AT_ONCE = 4;

  private final Servers servers;
  private final Duration patience;
  private final ThreadPoolExecutor threads = new ThreadPoolExecutor(0, AT_ONCE, 10, TimeUnit.SECONDS, new SynchronousQueue<>(), r -> {
    Thread t = new Thread(r, "server-talk");
    t.setDaemon(true);
    return t;
  });

  ServerConnections(Servers servers, Duration patience) {
    this.servers = servers;
    this.patience = patience;
  }

  /** Asks one server one question; every failure is a problem that says what failed. */
  <T> T ask(String name, Function<ModelServer, T> question) {
    requireKnown(name);
    Future<T> answer;
    try {
      answer = threads.submit(() -> {
        try (ModelServer server = servers.connect(name)) {
          return question.apply(server);
        }
      });
    } catch (RejectedExecutionException e) {
      throw new HttpProblem(503, "server/busy", "Too many questions to servers of models wait for their answers; try again soon.");
    }
    return await(name, answer);
  }

  /** What is not word for word on the list is nothing at all: it is not looked up, and nobody is asked. */
  void requireKnown(String name) {
    if (!servers.names().contains(name)) {
      throw HttpProblem.notFound("The operator's list has no server of that name.");
    }
  }

  private <T> T await(String name, Future<T> answer) {
    try {
      return answer.get(patience.toMillis(), TimeUnit.MILLISECONDS);
    } catch (TimeoutException e) {
      answer.cancel(true);
      throw new HttpProblem(504, "server/timed-out", "Server " + name + " did not answer within " + patience.toSeconds() + " s.");
    } catch (InterruptedException e) {
      answer.cancel(true);
      Thread.currentThread().interrupt();
      throw new HttpProblem(503, "server/busy", "This service is being stopped.");
    } catch (ExecutionException e) {
      if (e.getCause() instanceof ModelServerException s) {
        throw problem(s);
      }
      throw new IllegalStateException("asking server " + name, e.getCause());
    }
  }

  /** The server's refusals are not this client's: 401 and 403 would tell it to show another token. */
  private static HttpProblem problem(ModelServerException e) {
    int status = switch (e.reason()) {
      case NOT_FOUND -> 404;
      case TIMED_OUT -> 504;
      case UNREACHABLE, REFUSED, NOT_SET_UP, UNUSABLE -> 502;
    };
    return new HttpProblem(status, code(e), e.getMessage());
  }

  static String code(ModelServerException e) {
    return "server/" + e.reason().name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  @Override
  public void close() {
    threads.shutdownNow();
  }
}
