package org.seamledger.export.bcf;

import java.util.Collection;
import java.util.List;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Stream;
import org.seamledger.bcf.BcfVersion;
import org.seamledger.element.ModelInfo;
import org.seamledger.finding.TopicId;
import org.seamledger.takeoff.Takeoff;

/** The XML files of a whole package. */
final class ProjectFiles {

  private final Takeoff takeoff;
  private final String author;

  ProjectFiles(Takeoff takeoff, String author) {
    this.takeoff = takeoff;
    this.author = author;
  }

  /** {@code bcf.version}. */
  byte[] version(BcfVersion version) {
    XmlText xml = new XmlText();
    if (version == BcfVersion.V3_0) {
      xml.empty("Version", List.of("VersionId", version.id()));
    } else {
      xml.element("Version", List.of("VersionId", version.id()), () -> xml.text("DetailedVersion", version.id()));
    }
    return xml.bytes();
  }

  /** {@code project.bcfp}: the first model's project. */
  byte[] project(BcfVersion version) {
    ModelInfo first = takeoff.models().get(0);
    String id = TopicId.named("project\n" + (first.project().isBlank() ? first.file() : first.project())).toString();
    XmlText xml = new XmlText();
    xml.element(version == BcfVersion.V3_0 ? "ProjectInfo" : "ProjectExtension", () -> {
      xml.element("Project", List.of("ProjectId", id), () -> xml.text("Name", first.file()));
      if (version == BcfVersion.V2_1) {
        xml.empty("ExtensionSchema", List.of());
      }
    });
    return xml.bytes();
  }

  /** {@code extensions.xml}: every word that occurs, and those that an answer may need. */
  byte[] extensions(List<TopicContent> topics) {
    XmlText xml = new XmlText();
    xml.element("Extensions", () -> {
      words(xml, "TopicTypes", "TopicType", each(topics, t -> Stream.of(t.type())));
      TreeSet<String> statuses = each(topics, t -> Stream.of(t.status()));
      statuses.addAll(List.of(TopicContent.OPEN, TopicContent.CLOSED, TopicContent.REOPENED));
      words(xml, "TopicStatuses", "TopicStatus", statuses);
      words(xml, "Priorities", "Priority", each(topics, t -> Stream.of(t.priority())));
      words(xml, "TopicLabels", "TopicLabel", each(topics, t -> t.labels().stream()));
      TreeSet<String> users = each(topics, t -> t.notes().stream().map(TopicContent.Note::author));
      users.add(author);
      words(xml, "Users", "User", users);
    });
    return xml.bytes();
  }

  private static TreeSet<String> each(List<TopicContent> topics, Function<TopicContent, Stream<String>> words) {
    TreeSet<String> all = new TreeSet<>();
    topics.stream().flatMap(words).forEach(all::add);
    return all;
  }

  private static void words(XmlText xml, String list, String name, Collection<String> words) {
    xml.element(list, () -> words.forEach(w -> xml.text(name, w)));
  }
}
