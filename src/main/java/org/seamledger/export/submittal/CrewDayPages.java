package org.seamledger.export.submittal;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.seamledger.export.crew.CrewJob;
import org.seamledger.export.crew.StepWords;
import org.seamledger.export.crew.WindowsDrawing;
import org.seamledger.sequence.CarryUp;
import org.seamledger.sequence.CrewPlan;
import org.seamledger.sequence.Step;
import org.seamledger.weather.SealingWindows;

/** The crew's days: what is done, which holds there are, what is carried up; and the sealing windows where the weather is known. */
final class CrewDayPages implements SubmittalPages {

  private static final String PLACE = "crew-days";
  private static final String WINDOWS = "crew-windows";
  /** A picture of windows on paper, millimetres. */
  private static final double WIDTH = 185;

  private final CrewJob job;
  private final SubmittalContent content;

  CrewDayPages(CrewJob job, SubmittalContent content) {
    this.job = job;
    this.content = content;
  }

  @Override
  public OutlineEntry outline() {
    return new OutlineEntry("Days", PLACE, job.windows().stream().map(w -> new OutlineEntry("Sealing windows", WINDOWS)).toList());
  }

  @Override
  public void write(FoWriter fo) {
    content.frame().text("Days and what to carry up", Math.min(2, content.frame().columns()), () -> days(fo), fo);
    job.windows().ifPresent(w -> content.frame().text("Sealing windows", 1, () -> windows(w, fo), fo));
  }

  private void days(FoWriter fo) {
    CrewPlan plan = job.plan();
    FoHeadings.title(fo, PLACE, "Days of a crew of " + plan.people());
    if (plan.days() == 0) {
      FoHeadings.paragraph(fo, "No step: no face has panels.");
    }
    IntStream.rangeClosed(1, plan.days()).forEach(day -> day(day, fo));
  }

  private void day(int day, FoWriter fo) {
    CrewPlan plan = job.plan();
    FoHeadings.head(fo, PLACE + "-" + day, "Day " + day + (job.date(day).isEmpty() ? "" : ", " + job.date(day)));
    List<CrewPlan.Task> tasks = plan.on(day);
    if (!tasks.isEmpty()) {
      FoTable table =
          FoTable.open(fo, FoTable.Column.words("From", 10), FoTable.Column.words("Work", 40), FoTable.Column.words("Place", 26),
              FoTable.Column.number("Amount", 18));
      for (CrewPlan.Task task : tasks) {
        String on = (task.begins() ? "" : "… ") + task.step().work().label() + (task.ends() ? "" : " …");
        table.row().cell(StepWords.clock(task.from())).cell((task.step().locked() ? "■ " : "") + on).cell(task.step().place())
            .cell(StepWords.amount(task.step())).endRow();
      }
      table.close();
    }
    List<Step> begun = plan.begun(day);
    plan.holds().stream().filter(h -> begun.stream().anyMatch(s -> s.id().equals(h.step().id())))
        .forEach(h -> FoHeadings.labelled(fo, "■ " + h.step().place(), "look and cover from day " + h.readyDay() + ", "
            + StepWords.clock(h.ready()) + " on (beads gunned by day " + h.day() + ", " + StepWords.clock(h.gunned()) + ")"));
    plan.waits().stream().filter(w -> w.day() == day).forEach(w -> FoHeadings.labelled(fo, "Wait", "from " + StepWords.clock(w.from())
        + " until day " + w.untilDay() + ", " + StepWords.clock(w.until()) + ": "
        + (w.weather() ? "no weather to seal in at " : "beads stand at ")
        + w.step().place()));
    List<CarryUp.Item> items = CarryUp.of(begun, job.takeoff().quantities()).items();
    if (!items.isEmpty()) {
      FoHeadings.labelled(fo, "Carry up", items.stream().map(i -> i.amount() + " " + i.what()).collect(Collectors.joining("; ")));
    }
  }

  private void windows(SealingWindows windows, FoWriter fo) {
    FoHeadings.title(fo, WINDOWS, "Sealing windows");
    int step = content.setup().sheets().paper().isSmall() ? 2 : 4;
    int days = windows.byHand() ? 1 : job.request().days();
    for (int day = 1; day <= days && !windows.onDay(day).isEmpty(); day += step) {
      fo.open("block", "space-after", "3mm", "keep-together.within-page", "always");
      fo.drawing(WindowsDrawing.svg(windows, job.takeoff().system(), day, Math.min(step, days - day + 1)),
          "For each hour whether tape, beads and in-seam sealant may be applied", "content-width", WIDTH + "mm");
      fo.close("block");
    }
  }
}
