package org.seamledger.export.crew;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.seamledger.element.ModelInfo;
import org.seamledger.export.report.Table;
import org.seamledger.export.report.TextPage;
import org.seamledger.export.wording.CountText;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.sequence.CarryUp;
import org.seamledger.sequence.CrewPlan;
import org.seamledger.sequence.PlacedHoldPoint;
import org.seamledger.sequence.Step;
import org.seamledger.sequence.Work;
import org.seamledger.takeoff.Takeoff;

/** The plan of days as text: what is done, what is looked at first, what is carried up, where the crew waits. */
public final class SequenceReport {

  private static final int ITEMS = 24;

  private final Takeoff takeoff;
  private final CrewPlan plan;
  private final TextPage page = new TextPage();
  private final Map<String, PlacedHoldPoint> points = new LinkedHashMap<>();
  /** What each line or node is, by id. */
  private final Map<String, String> labels = new HashMap<>();

  private SequenceReport(Takeoff takeoff, CrewPlan plan) {
    this.takeoff = takeoff;
    this.plan = plan;
    takeoff.sequence().holdPoints().values().forEach(list -> list.forEach(h -> points.put(h.id(), h)));
    takeoff.lines().forEach(j -> labels.put(j.junction().junction().id(),
        " " + j.junction().type().label() + " " + String.join(" ", j.junction().junction().faces())));
    takeoff.nodes().forEach(n -> labels.put(n.id(), " " + n.kind().label()));
  }

  /** Writes UTF-8 and leaves {@code out} open. */
  public static void write(Takeoff takeoff, CrewPlan plan, OutputStream out) throws IOException {
    SequenceReport report = new SequenceReport(takeoff, plan);
    report.head();
    for (int day = 1; day <= plan.days(); day++) {
      report.day(day);
    }
    report.end();
    out.write(report.page.text().getBytes(StandardCharsets.UTF_8));
    out.flush();
  }

  private void head() {
    List<Step> steps = takeoff.sequence().steps();
    page.line("Model      " + takeoff.models().stream().map(ModelInfo::file).collect(Collectors.joining(" + ")));
    page.line("Crew       " + plan.people() + ", " + takeoff.system().crew().day() + " a day from "
        + clock(takeoff.system().crew().begins().value() / 3600));
    page.line("Work       " + CountText.of(steps.size(), "step") + " in " + CountText.of(plan.days(), "day") + ", "
        + CountText.of(points.size(), "hold point") + ", " + steps.stream().filter(Step::locked).count()
        + " of the steps locked until somebody with a name has looked");
    page.line("Beads      stand " + MeasureFormat.fixed(plan.holdHours(), 1) + " h before they are looked at and covered");
    page.paragraph("           ", "           ",
        "Days are an estimate by the rates of the roof system, in dry weather; hold points marked ! can't be skipped.");
    if (!takeoff.sequence().cycle().isEmpty()) {
      page.paragraph("CYCLE      ", "           ", String.join(", ", takeoff.sequence().cycle()));
    }
  }

  private void day(int day) {
    page.title("Day " + day);
    Table table = new Table("  ", "lllr");
    for (CrewPlan.Task task : plan.on(day)) {
      Step step = task.step();
      table.row(clock(task.from()), (task.begins() ? "" : "… ") + step.work().label() + (task.ends() ? "" : " …"), place(step),
          amount(step));
    }
    table.on(page);
    List<Step> begun = plan.on(day).stream().filter(CrewPlan.Task::begins).map(CrewPlan.Task::step).toList();
    looks(begun);
    List<CarryUp.Item> items = CarryUp.of(begun, takeoff.quantities()).items();
    if (!items.isEmpty()) {
      page.paragraph("  carry up  ", "            ",
          items.stream().limit(ITEMS).map(i -> i.amount() + " " + i.what()).collect(Collectors.joining("; "))
              + (items.size() > ITEMS ? "; and " + (items.size() - ITEMS) + " more" : ""));
    }
    plan.waits().stream().filter(w -> w.day() == day).forEach(w -> page.paragraph("  wait      ", "            ",
        "from " + clock(w.from()) + " until " + (w.untilDay() == day ? "" : "day " + w.untilDay() + ", ") + clock(w.until())
            + ": beads under "
            + w.step().work().label() + " at " + w.step().place() + " stand"));
  }

  /** What is looked at before the steps of a day, each look once with its places. */
  private void looks(List<Step> steps) {
    Map<String, List<String>> places = new LinkedHashMap<>();
    for (Step step : steps) {
      for (String id : step.holdPoints()) {
        PlacedHoldPoint point = points.get(id);
        String look = (point.locks().isEmpty() ? "  look      " : "  look !    ") + "before " + point.before() + ": " + point.check();
        String place = id.substring(0, id.indexOf('/'));
        List<String> at = places.computeIfAbsent(look, k -> new java.util.ArrayList<>());
        if (!at.contains(place)) {
          at.add(place);
        }
      }
    }
    places.forEach((look, at) -> page.paragraph(look.substring(0, 12), "            ",
        look.substring(12) + " [" + String.join(" ", at) + "]"));
  }

  private void end() {
    if (plan.days() == 0) {
      page.blank().line("No step: no face has panels.");
    }
  }

  private String place(Step step) {
    return step.place() + labels.getOrDefault(step.place(), "");
  }

  static String amount(Step step) {
    Work.Per per = step.work().per();
    return switch (per) {
      case FACE_AREA, UPPER_AREA, LOWER_AREA -> MeasureFormat.fixed(step.amount(), 1) + " m²";
      case EACH -> MeasureFormat.plain(step.amount(), 0) + " pc";
      default -> MeasureFormat.fixed(step.amount(), 1) + " m";
    };
  }

  static String clock(double hour) {
    long minutes = Math.round(hour * 60);
    return String.format(Locale.ROOT, "%02d:%02d", minutes / 60, minutes % 60);
  }
}
