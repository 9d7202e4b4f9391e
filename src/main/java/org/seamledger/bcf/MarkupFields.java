package org.seamledger.bcf;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.seamledger.finding.Remark;
import org.seamledger.finding.TopicAnswer;

/** What {@code markup.bcf} says of its topic. Comments stand beside the topic until 2.1 and inside it from 3.0 on: both are taken. */
final class MarkupFields implements XmlWalk.Fields {

  private static final String TOPIC = "Markup/Topic";
  /** Words of tools for a topic that is done with, letters only. The standard leaves them to each project. */
  private static final Set<String> CLOSED =
      Set.of("closed", "close", "accepted", "resolved", "done", "approved", "completed", "complete", "solved", "fixed", "wontfix");
  private static final Set<String> REOPENED = Set.of("reopened", "reopen");

  private final String place;
  private final Map<String, String> topic = new HashMap<>();
  private final Map<String, String> comment = new HashMap<>();
  private final List<Remark> remarks = new ArrayList<>();
  private boolean has;

  MarkupFields(String place) {
    this.place = place;
  }

  private static boolean isComment(String path) {
    return path.equals("Markup/Comment") || path.equals("Markup/Topic/Comments/Comment");
  }

  @Override
  public void start(String path, UnaryOperator<String> attribute) {
    if (path.equals(TOPIC)) {
      has = true;
      for (String name : List.of("Guid", "TopicType", "TopicStatus")) {
        topic.put(name, attribute.apply(name));
      }
    } else if (isComment(path)) {
      comment.clear();
    }
  }

  @Override
  public void end(String path, String text) {
    int slash = path.lastIndexOf('/');
    String parent = slash < 0 ? "" : path.substring(0, slash);
    if (parent.equals(TOPIC)) {
      topic.put(path.substring(slash + 1), text);
    } else if (isComment(parent)) {
      comment.put(path.substring(slash + 1), text);
    } else if (isComment(path)) {
      String said = comment.getOrDefault("Comment", "");
      if (!said.isEmpty()) {
        remarks.add(new Remark(comment.getOrDefault("Author", ""), date(comment.getOrDefault("Date", "")), said));
      }
    }
  }

  /** @throws BcfFormatException where it has no topic with a GUID */
  TopicAnswer topic() {
    String guid = topic.getOrDefault("Guid", "").toLowerCase(Locale.ROOT);
    if (!has || guid.isEmpty()) {
      throw new BcfFormatException(place, "a Topic with its Guid", has ? "a topic without one" : "none");
    }
    boolean isModified = !topic.getOrDefault("ModifiedDate", "").isEmpty();
    String status = topic.get("TopicStatus");
    return new TopicAnswer(guid, topic.getOrDefault("Title", ""), status, verdict(status), topic.getOrDefault("ModifiedAuthor", ""),
        date(topic.getOrDefault(isModified ? "ModifiedDate" : "CreationDate", "")), topic.getOrDefault("AssignedTo", ""), remarks);
  }

  private static String date(String text) {
    return BcfDate.instant(text).map(Instant::toString).orElse("");
  }

  private static TopicAnswer.Verdict verdict(String status) {
    String word = status.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}]", "");
    return CLOSED.contains(word) ? TopicAnswer.Verdict.CLOSED
        : REOPENED.contains(word) ? TopicAnswer.Verdict.REOPENED : TopicAnswer.Verdict.OPEN;
  }
}
