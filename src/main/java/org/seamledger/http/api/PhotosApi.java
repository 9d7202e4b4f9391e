package org.seamledger.http.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import org.seamledger.finding.Sha256;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.answer.JsonBodies;
import org.seamledger.journal.EventDraft;
import org.seamledger.journal.EventKind;
import org.seamledger.ledger.SitePhotos;
import org.seamledger.ledger.Store;
import org.seamledger.photo.PhotoLocation;
import org.seamledger.photo.PhotoRefusedException;
import org.seamledger.photo.PhotoScaler;
import org.seamledger.photo.ScaledPhoto;

/** Pictures of the work: sent before the event that shows them, under its id, so that one which is sent twice is one. */
public final class PhotosApi {

  private static final int AT_ONCE = 2;

  private final Store store;
  private final Semaphore scaling = new Semaphore(AT_ONCE);

  public PhotosApi(Store store) {
    this.store = store;
  }

  public void install(RoutesConfig routes) {
    routes.put("/api/analyses/{id}/record/photos/{event}", this::put);
    routes.get("/api/analyses/{id}/record/photos/{event}", this::get);
  }

  private String project(Context ctx) {
    return store.analyses().get(ctx.pathParam("id")).project();
  }

  /** With {@code ?location=keep} where it was taken is kept beside it; in the picture itself it never is. */
  private void put(Context ctx) throws IOException {
    LinkGrant.require(ctx, EventKind.PHOTO);
    String project = project(ctx);
    String event = ctx.pathParam("event");
    if (!EventDraft.isUuid(event)) {
      throw HttpProblem.badRequest("photo/id", "A photo is sent under the id of its event, a UUID in lower case.");
    }
    Optional<SitePhotos.Photo> known = store.photos().ofEvent(project, event);
    if (known.isPresent()) {
      JsonBodies.answer(ctx, 200, known.get());
      return;
    }
    ScaledPhoto photo = scaled(body(ctx));
    String location = "keep".equals(ctx.queryParam("location")) ? photo.location().map(PhotoLocation::words).orElse("") : "";
    JsonBodies.answer(ctx, 201, store.photos().put(project, event, new SitePhotos.Photo(Sha256.hex(photo.jpeg()), photo.width(),
        photo.height(), photo.jpeg().length, location), photo.jpeg()));
  }

  private static byte[] body(Context ctx) {
    byte[] bytes;
    try {
      bytes = ctx.bodyInputStream().readNBytes(PhotoScaler.MOST_BYTES + 1);
    } catch (IOException | RuntimeException e) {
      throw HttpProblem.badRequest("body/cut", "The photo did not arrive whole.");
    }
    if (bytes.length > PhotoScaler.MOST_BYTES) {
      throw new HttpProblem(413, "photo/too-large", "A photo may have " + (PhotoScaler.MOST_BYTES >> 20) + " MiB.");
    }
    return bytes;
  }

  private ScaledPhoto scaled(byte[] file) {
    if (!scaling.tryAcquire()) {
      throw new HttpProblem(503, "busy", "Other photos are being scaled; send this one again in a moment.");
    }
    try {
      return PhotoScaler.scale(file);
    } catch (PhotoRefusedException e) {
      throw new HttpProblem(422, "photo/refused", e.getMessage());
    } finally {
      scaling.release();
    }
  }

  private void get(Context ctx) {
    byte[] jpeg = store.photos().bytes(project(ctx), ctx.pathParam("event"))
        .orElseThrow(() -> HttpProblem.notFound("There is no photo of this event."));
    ctx.header("Cache-Control", "private, max-age=86400, immutable").header("Content-Security-Policy", "default-src 'none'").result(jpeg)
        .contentType("image/jpeg");
  }
}
