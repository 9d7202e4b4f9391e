package org.seamledger.source;

import java.io.IOException;
import java.io.OutputStream;
import java.net.http.HttpResponse;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.Flow;

/** Takes an answer's bytes as they come, counts them, and notes when the last ones came. */
final class Sink implements HttpResponse.BodySubscriber<Long> {

  /** More bytes than were allowed. */
  static final class TooLargeException extends IOException {
    private static final long serialVersionUID = 1L;
  }

  private final OutputStream out;
  private final long limit;
  private final CompletableFuture<Long> ended = new CompletableFuture<>();
  private Flow.Subscription subscription;
  private long bytes;
  private volatile long lastNanos = System.nanoTime();

  Sink(OutputStream out, long limit) {
    this.out = out;
    this.limit = limit;
  }

  /** When bytes came last, by {@link System#nanoTime}; when this was made, before any came. */
  long lastNanos() {
    return lastNanos;
  }

  @Override
  public CompletionStage<Long> getBody() {
    return ended;
  }

  @Override
  public void onSubscribe(Flow.Subscription given) {
    subscription = given;
    lastNanos = System.nanoTime();
    given.request(1);
  }

  @Override
  public void onNext(List<ByteBuffer> buffers) {
    lastNanos = System.nanoTime();
    try {
      for (ByteBuffer buffer : buffers) {
        write(buffer);
      }
      subscription.request(1);
    } catch (IOException | RuntimeException | Error e) {
      subscription.cancel();
      ended.completeExceptionally(e);
    }
  }

  private void write(ByteBuffer buffer) throws IOException {
    bytes += buffer.remaining();
    if (bytes > limit) {
      throw new TooLargeException();
    }
    byte[] block = new byte[buffer.remaining()];
    buffer.get(block);
    out.write(block);
  }

  @Override
  public void onError(Throwable problem) {
    ended.completeExceptionally(problem);
  }

  @Override
  public void onComplete() {
    ended.complete(bytes);
  }
}
