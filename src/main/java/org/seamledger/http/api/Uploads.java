package org.seamledger.http.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.http.Context;
import jakarta.servlet.MultipartConfigElement;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.Part;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.seamledger.finding.FullDisk;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.answer.Names;
import org.seamledger.http.setting.Limits;
import org.seamledger.ledger.StoredFile;

/** Files that clients send: streamed to disk part by part, under names that the program makes up. */
final class Uploads {

  private static final int IN_MEMORY = 1 << 16;
  /** Of a refused upload at most about this much (bytes) is still taken. */
  private static final int DRAINED = 1 << 20;
  private static final int LONGEST_FIELD = 200;
  private static final int LONGEST_LIST = 1 << 16;
  private static final long SYSTEM_BYTES = 1 << 20;

  private final UploadFolder folder;
  private final Limits limits;

  Uploads(UploadFolder folder, Limits limits) {
    this.folder = folder;
    this.limits = limits;
  }

  /**
   * What one upload holds.
   *
   * @param served texts that name revisions on servers
   * @param priority where workers take analyses: the higher the earlier, 0 is usual
   * @param placements as {@link PlacementRequests} describes them: of the models sent and served together, in that order
   */
  record Upload(List<StoredFile> files, Optional<String> project, List<String> served, Optional<JsonNode> placements, int priority) {
    String title() {
      return files.get(0).name();
    }
  }

  /** Reads a multipart body into the folder of an analysis; leaves nothing behind where it is refused. */
  Upload receive(Context ctx, String analysis) {
    try {
      return read(ctx, analysis);
    } catch (HttpProblem refused) {
      // An answer given while the client still sends gets lost with the connection: take a little more, then let the connection go.
      drain(ctx);
      ctx.header("Connection", "close");
      throw refused;
    }
  }

  private static void drain(Context ctx) {
    try (InputStream in = ctx.req().getInputStream()) {
      byte[] buffer = new byte[IN_MEMORY];
      for (int taken = 0; taken < DRAINED;) {
        int n = in.read(buffer);
        if (n < 0) {
          return;
        }
        taken += n;
      }
    } catch (IOException | RuntimeException e) {
      // What could not be taken is refused all the same.
    }
  }

  private Upload read(Context ctx, String analysis) {
    String type = ctx.contentType();
    if (type == null || !type.toLowerCase(Locale.ROOT).startsWith("multipart/form-data")) {
      throw new HttpProblem(415, "upload/type", "Send the models as multipart/form-data, each as a part named model.");
    }
    if (ctx.req().getContentLengthLong() > limits.requestBytes()) {
      throw tooLarge();
    }
    ctx.req().setAttribute(ServletContextRequest.MULTIPART_CONFIG_ELEMENT,
        new MultipartConfigElement(folder.scratch().toString(), limits.fileBytes(), limits.requestBytes(), IN_MEMORY));
    boolean kept = false;
    try {
      Upload upload = store(ctx.req().getParts(), analysis);
      kept = true;
      return upload;
    } catch (IOException | ServletException | RuntimeException e) {
      throw refusal(e);
    } finally {
      if (!kept) {
        folder.remove(analysis);
      }
    }
  }

  private Upload store(Collection<Part> parts, String analysis) throws IOException {
    List<Part> models = parts.stream().filter(p -> p.getName().equals("model")).toList();
    List<Part> systems = parts.stream().filter(p -> p.getName().equals("system")).toList();
    List<String> served = fields(parts, "served", LONGEST_FIELD);
    check(parts, models, systems, served.size());
    List<StoredFile> files = new ArrayList<>();
    for (Part p : models) {
      files.add(write(p, analysis, files.size(), "model"));
    }
    for (Part p : systems) {
      files.add(write(p, analysis, files.size(), "system"));
    }
    Optional<JsonNode> placements = fields(parts, "placements", LONGEST_LIST).stream().findFirst().map(PlacementRequests::parse);
    return new Upload(files, fields(parts, "project", LONGEST_FIELD).stream().findFirst(), served, placements, priority(parts));
  }

  private static int priority(Collection<Part> parts) throws IOException {
    String word = fields(parts, "priority", LONGEST_FIELD).stream().findFirst().orElse("normal");
    return switch (word) {
      case "high" -> 1;
      case "normal" -> 0;
      case "low" -> -1;
      default -> throw HttpProblem.badRequest("upload/priority", "A part named priority says high, normal or low.");
    };
  }

  private void check(Collection<Part> parts, List<Part> models, List<Part> systems, int served) {
    if (models.isEmpty() && served == 0) {
      throw HttpProblem.badRequest("upload/no-model",
          "Send at least one model as a part named model, or name one on a server as a part named served.");
    }
    if (models.size() + served > limits.files()) {
      throw new HttpProblem(413, "upload/too-many",
          "At most " + limits.files() + " models are analysed together; this upload has " + (models.size() + served) + ".");
    }
    if (systems.size() > 1 || systems.stream().anyMatch(p -> p.getSize() > SYSTEM_BYTES)) {
      throw HttpProblem.badRequest("upload/system", "Send one roof system at most, as a JSON file of at most 1 MiB.");
    }
    for (Part p : parts) {
      if (!Set.of("model", "served", "system", "project", "placements", "priority").contains(p.getName())) {
        throw HttpProblem.badRequest("upload/part",
            "A part is named " + Names.clean(p.getName()) + "; parts are named model, served, system, project, placements or priority.");
      }
    }
    if (models.stream().anyMatch(p -> p.getSize() == 0)) {
      throw HttpProblem.badRequest("upload/empty", "A model is empty: it has no bytes.");
    }
  }

  private StoredFile write(Part part, String analysis, int place, String role) throws IOException {
    String submitted = part.getSubmittedFileName();
    Path file;
    try (InputStream in = part.getInputStream()) {
      file = folder.keep(analysis, role.equals("system") ? "system.json" : Names.onDisk(place, submitted), in);
    } finally {
      part.delete();
    }
    return new StoredFile(Names.file(submitted), file.toString(), Files.size(file), role);
  }

  private static List<String> fields(Collection<Part> parts, String name, int most) throws IOException {
    List<String> texts = new ArrayList<>();
    for (Part p : parts) {
      if (p.getName().equals(name)) {
        try (InputStream in = p.getInputStream()) {
          texts.add(new String(in.readNBytes(most), StandardCharsets.UTF_8).strip());
        }
      }
    }
    texts.removeIf(String::isEmpty);
    return texts;
  }

  private HttpProblem refusal(Exception e) {
    for (Throwable t = e; t != null; t = t.getCause()) {
      if (t instanceof HttpProblem p) {
        return p;
      }
      String m = String.valueOf(t.getMessage());
      if (m.matches("(?s).*max (file size|length) exceeded.*")) {
        return tooLarge();
      }
    }
    if (FullDisk.causes(e)) {
      return HttpProblem.diskFull();
    }
    return HttpProblem.badRequest("upload/broken",
        "The upload is not whole: a multipart/form-data body was expected, with parts named model.");
  }

  private HttpProblem tooLarge() {
    return new HttpProblem(413, "upload/too-large", "A model may have " + limits.fileBytes() + " bytes here, and an upload "
        + limits.requestBytes() + " in all. Compress it (.ifczip), or leave out what is not near the roof.");
  }

}
