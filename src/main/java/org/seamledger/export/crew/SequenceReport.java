package org.seamledger.export.crew;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
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
import org.seamledger.takeoff.Takeoff;

/** The plan of days as text: what is done, what is looked at first, what is carried up, where the crew waits. */
public final class SequenceReport {

  private static final int ITEMS = 24;

  private final CrewJob job;
  private final Takeoff takeoff;
  private final CrewPlan plan;
  private final TextPage page = new TextPage();
  private final Map<String, PlacedHoldPoint> points = new LinkedHashMap<>();
  /** What each line or node is, by id. */
  private final Map<String, String> labels = new HashMap<>();

  private SequenceReport(CrewJob job) {
    this.job = job;
    this.takeoff = job.takeoff();
    this.plan = job.plan();
    takeoff.sequence().holdPoints().values().forEach(list -> list.forEach(h -> points.put(h.id(), h)));
    takeoff.lines().forEach(j -> labels.put(j.junction().junction().id(),
        " " + j.junction().type().label() + " " + String.join(" ", j.junction().junction().faces())));
    takeoff.nodes().forEach(n -> labels.put(n.id(), " " + n.kind().label()));
  }

  /** Writes UTF-8 and leaves {@code out} open. */
  public static void write(CrewJob job, OutputStream out) throws IOException {
    SequenceReport report = new SequenceReport(job);
    CrewPlan plan = job.plan();
    report.head();
    job.windows().ifPresent(w -> new WindowsSection(w, job.takeoff().system(), report.page).write(job.request().days()));
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
        + StepWords.clock(takeoff.system().crew().begins().value() / 3600));
    page.line("Work       " + CountText.of(steps.size(), "step") + " in " + CountText.of(plan.days(), "day") + ", "
        + CountText.of(points.size(), "hold point") + ", " + steps.stream().filter(Step::locked).count()
        + " of the steps locked until somebody with a name has looked");
    page.line("Beads      stand " + MeasureFormat.fixed(plan.holdHours(), 1) + " h before they are looked at and covered"
        + (job.windows().isEmpty() ? "" : ", or as long as it takes in the weather"));
    page.paragraph("           ", "           ",
        "Days are an estimate by the rates of the roof system"
            + (job.windows().isEmpty() ? ", in dry weather" : "") + "; hold points marked ! can't be skipped.");
    if (!takeoff.sequence().cycle().isEmpty()) {
      page.paragraph("CYCLE      ", "           ", String.join(", ", takeoff.sequence().cycle()));
    }
  }

  private void day(int day) {
    page.title("Day " + day + (job.date(day).isEmpty() ? "" : ", " + job.date(day)));
    Table table = new Table("  ", "lllr");
    for (CrewPlan.Task task : plan.on(day)) {
      Step step = task.step();
      table.row(StepWords.clock(task.from()), (task.begins() ? "" : "… ") + step.work().label() + (task.ends() ? "" : " …"), place(step),
          StepWords.amount(step));
    }
    table.on(page);
    List<Step> begun = plan.begun(day);
    looks(begun);
    begun.forEach(this::held);
    List<CarryUp.Item> items = CarryUp.of(begun, takeoff.quantities()).items();
    if (!items.isEmpty()) {
      page.paragraph("  carry up  ", "            ",
          items.stream().limit(ITEMS).map(i -> i.amount() + " " + i.what()).collect(Collectors.joining("; "))
              + (items.size() > ITEMS ? "; and " + (items.size() - ITEMS) + " more" : ""));
    }
    plan.waits().stream().filter(w -> w.day() == day).forEach(this::wait);
  }

  /** For a locked step: when its beads were gunned, and since when they have stood long enough. */
  private void held(Step step) {
    plan.holds().stream().filter(h -> step.locked() && h.step().id().equals(step.id())).findFirst().ifPresent(h -> page.paragraph(
        "  hold !    ", "            ", step.work().label() + " at " + step.place() + ": beads gunned by day " + h.day() + ", "
            + StepWords.clock(h.gunned()) + "; look and cover from day " + h.readyDay() + ", " + StepWords.clock(h.ready()) + " on"));
  }

  private void wait(CrewPlan.Wait w) {
    String until = (w.untilDay() == w.day() ? "" : "day " + w.untilDay() + ", ") + StepWords.clock(w.until());
    page.paragraph("  wait      ", "            ", "from " + StepWords.clock(w.from()) + " until " + until + ": "
        + (w.weather() ? "no weather to seal in for " + w.step().work().label() + " at " + w.step().place()
            : "beads under " + w.step().work().label() + " at " + w.step().place() + " stand"));
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
}
