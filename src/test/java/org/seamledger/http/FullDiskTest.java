package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.finding.SmallDisk;

/**
 * A data folder on a disk of its own, a small file system in memory, that is full but for a few pages: more of them with every round, so
 * that in turn each write is the one that finds no room. By hand: {@code -Ddisk.rounds=100}.
 */
@Tag("slow")
class FullDiskTest {

  private static final int ROUNDS = Integer.getInteger("disk.rounds", 14);
  private static final int PAGE = 4096;

  @TempDir
  private Path data;

  private static void fill(Path ballast, int pagesLeft) throws IOException {
    try (RandomAccessFile file = new RandomAccessFile(ballast.toFile(), "rw")) {
      byte[] page = new byte[PAGE];
      try {
        while (true) {
          file.write(page);
        }
      } catch (IOException full) {
        file.setLength(Math.max(0, file.length() / PAGE - pagesLeft) * PAGE);
      }
    }
  }

  @Test
  void refusesOrWaitsAndKeepsWhatItAcknowledged() throws Exception {
    try (ServedProcess service = new ServedProcess(SmallDisk.at(data, "16m"), List.of("-Xmx128m"), data)) {
      Path ballast = Path.of("/proc/" + service.pid() + "/root" + data.toAbsolutePath()).resolve("ballast");
      String hall = ServedProcess.json(service.upload("house")).path("id").textValue();
      assertThat(service.ended(hall).path("state").textValue()).isEqualTo("done");
      String junction = service.get("/api/analyses/" + hall + "/ledger").at("/junctions/0/id").textValue();
      Map<String, String> sent = new HashMap<>();
      String note = "";
      long version = 0;
      int refused = 0;
      for (int round = 0; round < ROUNDS; round++) {
        fill(ballast, round);
        String next = ("note " + round + " ").repeat(200);
        HttpResponse<String> review = review(service, hall, junction, next, version);
        HttpResponse<String> upload = service.upload("many count=60 millis=50 round=" + round);
        if (review.statusCode() == 200) {
          note = next.strip();
        }
        refused += (isFull(review, 200) ? 1 : 0) + (isFull(upload, 202) ? 1 : 0);
        if (upload.statusCode() == 202) {
          sent.put(ServedProcess.json(upload).path("id").textValue(), "round " + round);
        }
        assertThat(service.send("GET", "/api/health", "", "").statusCode()).isEqualTo(200);
        assertThat(service.get("/api/analyses/" + hall + "/ledger").path("junctions").size()).as("reading goes on").isPositive();
        Files.delete(ballast);
        version = kept(service, hall, junction, note);
      }
      assertThat(refused).as("the disk was full indeed").isPositive();
      for (Map.Entry<String, String> s : sent.entrySet()) {
        JsonNode ended = service.ended(s.getKey());
        assertThat(ended.path("state").textValue()).as("%s: %s%n%s", s.getValue(), ended, service.log()).isEqualTo("done");
        assertThat(service.get("/api/analyses/" + s.getKey() + "/ledger").path("junctions")).hasSize(60);
      }
      assertThat(review(service, hall, junction, "at last", version).statusCode()).isEqualTo(200);
      assertThat(service.get("/api/health").path("status").textValue()).isEqualTo("ok");
    }
  }

  private static HttpResponse<String> review(ServedProcess service, String analysis, String junction, String note, long version)
      throws IOException, InterruptedException {
    return service.send("PUT", "/api/analyses/" + analysis + "/reviews/" + junction, "application/json",
        "{\"state\":\"checked\",\"note\":\"" + note.strip() + "\",\"version\":" + version + "}");
  }

  /** Either it was done, or it is said in one sentence that there is no room. */
  private static boolean isFull(HttpResponse<String> answer, int done) throws IOException {
    if (answer.statusCode() == done) {
      return false;
    }
    assertThat(answer.statusCode()).as(answer.body()).isIn(503, 507);
    assertThat(ServedProcess.json(answer).path("code").textValue()).isEqualTo("storage/full");
    return true;
  }

  /** The note that was acknowledged last is the one that is kept; its version. */
  private static long kept(ServedProcess service, String analysis, String junction, String note) throws IOException, InterruptedException {
    for (JsonNode r : service.get("/api/analyses/" + analysis + "/reviews").path("reviews")) {
      if (r.path("junction").textValue().equals(junction)) {
        assertThat(r.path("note").textValue()).isEqualTo(note);
        return r.path("version").longValue();
      }
    }
    assertThat(note).isEmpty();
    return 0;
  }
}
