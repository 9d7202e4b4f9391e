package org.seamledger.export.bcf;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.seamledger.bcf.BcfDate;
import org.seamledger.bcf.BcfVersion;
import org.seamledger.element.ModelInfo;
import org.seamledger.export.view.Camera;
import org.seamledger.export.view.Sight;
import org.seamledger.finding.TopicId;
import org.seamledger.geometry.Vec3;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.takeoff.Takeoff;

/** The XML files of one topic, as the version's schemas have them. */
final class TopicFiles {

  static final String VIEWPOINT = "viewpoint.bcfv";
  static final String SNAPSHOT = "snapshot.png";
  private static final int DECIMALS = 9;
  private static final int METRE_DECIMALS = 6;

  private final Takeoff takeoff;
  private final BcfVersion version;
  private final String author;
  private final Instant made;

  TopicFiles(Takeoff takeoff, BcfVersion version, String author, Instant made) {
    this.takeoff = takeoff;
    this.version = version;
    this.author = author;
    this.made = made;
  }

  private boolean isNew() {
    return version == BcfVersion.V3_0;
  }

  static UUID viewpointOf(TopicContent topic) {
    return TopicId.named(topic.guid() + "\nviewpoint");
  }

  /** {@code markup.bcf}. */
  byte[] markup(TopicContent topic, int index, boolean hasViewpoint) {
    XmlText xml = new XmlText();
    xml.element("Markup", () -> {
      header(xml);
      List<String> attributes =
          List.of("Guid", topic.guid().toString(), "TopicType", topic.type(), "TopicStatus", topic.status());
      xml.element("Topic", attributes, () -> topic(xml, topic, index, hasViewpoint));
      if (!isNew()) {
        topic.notes().forEach(n -> comment(xml, n));
        if (hasViewpoint) {
          viewpoint(xml, "Viewpoints", topic);
        }
      }
    });
    return xml.bytes();
  }

  private void header(XmlText xml) {
    xml.element("Header", () -> {
      if (isNew()) {
        xml.element("Files", () -> takeoff.models().forEach(m -> file(xml, m)));
      } else {
        takeoff.models().forEach(m -> file(xml, m));
      }
    });
  }

  private void file(XmlText xml, ModelInfo model) {
    List<String> attributes = new ArrayList<>();
    if (model.project().matches("[0-9A-Za-z_$]{22}")) {
      attributes.addAll(List.of("IfcProject", model.project()));
    }
    attributes.addAll(List.of(isNew() ? "IsExternal" : "isExternal", "true"));
    xml.element("File", attributes, () -> {
      xml.text("Filename", model.file());
      BcfDate.instant(model.date()).ifPresent(at -> xml.text("Date", at.toString()));
    });
  }

  private void topic(XmlText xml, TopicContent topic, int index, boolean hasViewpoint) {
    xml.text("Title", topic.title());
    xml.text("Priority", topic.priority());
    xml.text("Index", String.valueOf(index));
    if (isNew()) {
      xml.element("Labels", () -> topic.labels().forEach(l -> xml.text("Label", l)));
    } else {
      topic.labels().forEach(l -> xml.text("Labels", l));
    }
    xml.text("CreationDate", made.toString());
    xml.text("CreationAuthor", author);
    if (!topic.notes().isEmpty()) {
      TopicContent.Note last = topic.notes().get(topic.notes().size() - 1);
      xml.text("ModifiedDate", last.date().toString());
      xml.text("ModifiedAuthor", last.author());
    }
    xml.lines("Description", topic.description());
    if (isNew()) {
      if (!topic.notes().isEmpty()) {
        xml.element("Comments", () -> topic.notes().forEach(n -> comment(xml, n)));
      }
      if (hasViewpoint) {
        xml.element("Viewpoints", () -> viewpoint(xml, "ViewPoint", topic));
      }
    }
  }

  private static void comment(XmlText xml, TopicContent.Note note) {
    xml.element("Comment", List.of("Guid", note.guid().toString()), () -> {
      xml.text("Date", note.date().toString());
      xml.text("Author", note.author());
      xml.lines("Comment", note.text().lines().toList());
    });
  }

  private static void viewpoint(XmlText xml, String name, TopicContent topic) {
    xml.element(name, List.of("Guid", viewpointOf(topic).toString()), () -> {
      xml.text("Viewpoint", VIEWPOINT);
      xml.text("Snapshot", SNAPSHOT);
      xml.text("Index", "0");
    });
  }

  /** {@code viewpoint.bcfv}: the camera in the first model's own coordinates. */
  byte[] viewpoint(TopicContent topic, Sight sight, Camera camera) {
    XmlText xml = new XmlText();
    xml.element("VisualizationInfo", List.of("Guid", viewpointOf(topic).toString()), () -> {
      xml.element("Components", () -> components(xml, topic.components()));
      xml.element("PerspectiveCamera", () -> {
        point(xml, "CameraViewPoint", takeoff.world(camera.eye()), METRE_DECIMALS);
        point(xml, "CameraDirection", camera.forward(), DECIMALS);
        point(xml, "CameraUpVector", camera.up(), DECIMALS);
        xml.text("FieldOfView", MeasureFormat.plain(camera.fieldOfView(), METRE_DECIMALS));
        if (isNew()) {
          xml.text("AspectRatio", MeasureFormat.plain(camera.aspect(), METRE_DECIMALS));
        }
      });
      if (sight.line().size() > 1) {
        xml.element("Lines", () -> lines(xml, sight.line()));
      }
    });
    return xml.bytes();
  }

  private void components(XmlText xml, List<String> globalIds) {
    if (!isNew()) {
      hints(xml);
    }
    if (!globalIds.isEmpty()) {
      xml.element("Selection", () -> globalIds.forEach(id -> xml.empty("Component", List.of("IfcGuid", id))));
    }
    if (isNew()) {
      xml.element("Visibility", List.of("DefaultVisibility", "true"), () -> hints(xml));
    } else {
      xml.empty("Visibility", List.of("DefaultVisibility", "true"));
    }
  }

  private static void hints(XmlText xml) {
    xml.empty("ViewSetupHints", List.of("SpacesVisible", "false", "SpaceBoundariesVisible", "false", "OpeningsVisible", "false"));
  }

  private void lines(XmlText xml, List<Vec3> path) {
    for (int i = 1; i < path.size(); i++) {
      Vec3 from = takeoff.world(path.get(i - 1));
      Vec3 to = takeoff.world(path.get(i));
      xml.element("Line", () -> {
        point(xml, "StartPoint", from, METRE_DECIMALS);
        point(xml, "EndPoint", to, METRE_DECIMALS);
      });
    }
  }

  private static void point(XmlText xml, String name, Vec3 p, int decimals) {
    xml.element(name, () -> {
      xml.text("X", MeasureFormat.plain(p.x(), decimals));
      xml.text("Y", MeasureFormat.plain(p.y(), decimals));
      xml.text("Z", MeasureFormat.plain(p.z(), decimals));
    });
  }

}
