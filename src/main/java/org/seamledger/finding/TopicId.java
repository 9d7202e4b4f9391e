package org.seamledger.finding;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * What a finding is called where it is handed on: a name-based UUID (version 3 of RFC 9562) of what is the same in every export, its code,
 * junction, elements, and which of the findings it is that agree in these. A finding of the whole model takes the models' names, too, so
 * that it is not the same as that of another building.
 */
public final class TopicId {

  private static final String SPACE = "https://seamledger.org/topic\n";

  private TopicId() {
  }

  /** What of a finding goes into its id. */
  public record Subject(String code, String junction, List<String> elements) {
    public Subject {
      elements = List.copyOf(elements);
    }

    public static Subject of(Finding f) {
      return new Subject(f.code(), f.junction(), f.elements());
    }
  }

  /**
   * An id for each of a result's findings, in their order, each once.
   *
   * @param files of the models, without folders
   */
  public static List<UUID> all(List<Subject> findings, List<String> files) {
    Map<Subject, Integer> seen = new HashMap<>();
    List<UUID> ids = new ArrayList<>(findings.size());
    for (Subject s : findings) {
      ids.add(of(s, seen.merge(s, 1, Integer::sum), files));
    }
    return ids;
  }

  private static UUID of(Subject s, int occurrence, List<String> files) {
    String where = s.junction().isEmpty() && s.elements().isEmpty() ? files.stream().collect(Collectors.joining("\n", "\n", "")) : "";
    return named(SPACE + s.code() + "\n" + s.junction() + "\n" + String.join(" ", s.elements()) + "\n" + occurrence + where);
  }

  /** The name-based UUID of a text. */
  public static UUID named(String text) {
    return UUID.nameUUIDFromBytes(text.getBytes(StandardCharsets.UTF_8));
  }
}
