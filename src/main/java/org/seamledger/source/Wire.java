package org.seamledger.source;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.ConnectException;
import java.net.URI;
import java.net.UnknownHostException;
import java.net.http.HttpClient;
import java.net.http.HttpConnectTimeoutException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.channels.UnresolvedAddressException;
import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;
import javax.net.ssl.SSLException;
import org.seamledger.finding.FullDisk;
import org.seamledger.source.ModelServerException.Reason;

/**
 * HTTP to one server: bounded in time and size, ended by an interrupt, never sent on to another address. What is posted may hold secrets,
 * so it stands in the body alone and in no message.
 */
final class Wire {

  private static final long LOOK_MS = 100;
  private static final long LARGEST_ANSWER = 256L << 20;

  private final ServerAccess access;
  private final HttpClient client;

  Wire(ServerAccess access) {
    this.access = access;
    this.client = HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).followRedirects(HttpClient.Redirect.NEVER)
        .connectTimeout(access.limits().connect()).build();
  }

  /** Posts JSON and gives the bytes of the answer, which has to come within the time for a silence. */
  byte[] ask(String path, byte[] json) {
    ByteArrayOutputStream answer = new ByteArrayOutputStream();
    Duration patience = access.limits().answer();
    post(path, "application/json", json, answer, LARGEST_ANSWER, new Deadline(patience.multipliedBy(2)));
    return answer.toByteArray();
  }

  /**
   * Posts a form and writes the answer as it comes.
   *
   * @return how many bytes came
   */
  long download(String path, byte[] form, OutputStream out, Deadline deadline) {
    return post(path, "application/x-www-form-urlencoded", form, out, access.limits().bytes(), deadline);
  }

  private long post(String path, String type, byte[] body, OutputStream out, long limit, Deadline deadline) {
    HttpRequest request = HttpRequest.newBuilder(URI.create(access.url() + path)).header("Content-Type", type)
        .POST(HttpRequest.BodyPublishers.ofByteArray(body)).build();
    // A refusal's text is of no use to anybody: only what comes with 200 is kept.
    AtomicReference<Sink> sink = new AtomicReference<>(new Sink(OutputStream.nullOutputStream(), limit));
    CompletableFuture<HttpResponse<Long>> coming = client.sendAsync(request, head -> {
      sink.set(new Sink(head.statusCode() == 200 ? out : OutputStream.nullOutputStream(), limit));
      return sink.get();
    });
    try {
      HttpResponse<Long> answer = await(coming, sink, deadline);
      requireGood(answer.statusCode());
      return answer.body();
    } finally {
      coming.cancel(true);
    }
  }

  private HttpResponse<Long> await(CompletableFuture<HttpResponse<Long>> coming, AtomicReference<Sink> sink, Deadline deadline) {
    while (true) {
      try {
        return coming.get(LOOK_MS, TimeUnit.MILLISECONDS);
      } catch (TimeoutException e) {
        requireTime(sink.get().lastNanos(), deadline);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new CancellationException("interrupted while waiting for " + access.name());
      } catch (ExecutionException e) {
        throw failure(e.getCause());
      }
    }
  }

  private void requireTime(long lastNanos, Deadline deadline) {
    deadline.check(access);
    Duration silence = access.limits().answer();
    if (System.nanoTime() - lastNanos > silence.toNanos()) {
      throw new ModelServerException(Reason.TIMED_OUT, access + " has sent nothing for " + Deadline.words(silence));
    }
  }

  private ModelServerException failure(Throwable cause) {
    Optional<Error> ours = find(cause, Error.class);
    if (ours.isPresent()) {
      throw ours.get();
    }
    if (FullDisk.causes(cause)) {
      throw new UncheckedIOException(find(cause, IOException.class).orElseThrow());
    }
    if (find(cause, Sink.TooLargeException.class).isPresent()) {
      return new ModelServerException(Reason.UNUSABLE, access + " sent more than the " + access.limits().bytes()
          + " bytes that a model may have here");
    }
    if (find(cause, HttpConnectTimeoutException.class).isPresent()) {
      return new ModelServerException(Reason.TIMED_OUT, access + " took no connection for " + Deadline.words(access.limits().connect()));
    }
    if (find(cause, UnresolvedAddressException.class).isPresent() || find(cause, UnknownHostException.class).isPresent()) {
      return unreachable("there is no host of that name");
    }
    Optional<SSLException> unsafe = find(cause, SSLException.class);
    if (unsafe.isPresent()) {
      return unreachable("no safe connection can be made (" + Lines.plain(unsafe.get().getMessage()) + ")");
    }
    return unreachable(find(cause, ConnectException.class).isPresent() ? "nobody answers at that address"
        : "the connection broke before the answer was complete");
  }

  private static <T extends Throwable> Optional<T> find(Throwable thrown, Class<T> type) {
    return Stream.iterate(thrown, Objects::nonNull, Throwable::getCause).filter(type::isInstance).map(type::cast).findFirst();
  }

  private ModelServerException unreachable(String why) {
    return new ModelServerException(Reason.UNREACHABLE, access + " can't be reached: " + why);
  }

  private void requireGood(int status) {
    if (status == 200) {
      return;
    }
    String answered = access + " answered with HTTP status " + status;
    if (status >= 300 && status < 400) {
      throw new ModelServerException(Reason.UNUSABLE, answered + ", a redirection, which is not followed; is its address right?");
    }
    if (status == 401 || status == 403 || status == 407) {
      throw new ModelServerException(Reason.REFUSED, answered + ": access is refused before the server is asked");
    }
    if (status == 502 || status == 503 || status == 504) {
      throw new ModelServerException(Reason.UNREACHABLE, answered + ": it is not available now");
    }
    throw new ModelServerException(Reason.UNUSABLE, answered + (status == 404 ? "; is its address right?" : ""));
  }
}
