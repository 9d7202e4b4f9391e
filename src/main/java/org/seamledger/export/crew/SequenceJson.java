package org.seamledger.export.crew;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.stream.IntStream;
import org.seamledger.export.json.JsonOutput;
import org.seamledger.sequence.CarryUp;
import org.seamledger.sequence.CrewPlan;
import org.seamledger.sequence.PlacedHoldPoint;
import org.seamledger.sequence.Step;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.weather.SealantClass;

/** The order of work and the plan of days as JSON. */
public final class SequenceJson {

  private SequenceJson() {
  }

  /** Writes the document and a line end; leaves {@code out} open. */
  public static void write(CrewJob job, OutputStream out) throws IOException {
    Takeoff takeoff = job.takeoff();
    CrewPlan plan = job.plan();
    try (JsonOutput json = new JsonOutput(out)) {
      json.document(() -> {
        json.object("crew", () -> {
          json.count("people", plan.people());
          json.number("hoursADay", takeoff.system().crew().day().value() / 3600);
          json.number("holdHours", plan.holdHours());
        });
        json.words("cycle", takeoff.sequence().cycle());
        json.objects("steps", takeoff.sequence().steps(), step -> step(step, json));
        json.objects("holdPoints", takeoff.sequence().holdPoints().values().stream().flatMap(List::stream).toList(),
            point -> point(point, json));
        json.objects("days", IntStream.rangeClosed(1, plan.days()).boxed().toList(), day -> day(job, day, json));
        json.objects("waits", plan.waits(), wait -> {
          json.word("step", wait.step().id());
          json.count("day", wait.day());
          json.number("from", wait.from());
          json.count("untilDay", wait.untilDay());
          json.number("until", wait.until());
          json.word("for", wait.weather() ? "weather" : "beads");
        });
        json.objects("holds", plan.holds(), hold -> {
          json.word("step", hold.step().id());
          json.count("day", hold.day());
          json.number("gunned", hold.gunned());
          json.count("readyDay", hold.readyDay());
          json.number("ready", hold.ready());
        });
        if (job.windows().isPresent()) {
          WindowsJson.write(job, json);
        }
      });
    }
  }

  private static void step(Step step, JsonOutput json) throws IOException {
    json.word("id", step.id());
    json.word("place", step.place());
    json.word("work", step.work().id());
    json.word("label", step.work().label());
    json.word("does", step.work().does());
    json.number("amount", step.amount());
    json.word("per", step.work().per().word());
    json.words("after", step.after());
    json.words("holdPoints", step.holdPoints());
    json.flag("locked", step.locked());
    json.objects("seals", step.seals(), seal -> {
      json.word("place", seal.place());
      json.word("class", SealantClass.of(seal.form()).word());
      json.word("exposure", seal.exposure().word());
      json.number("lengthM", seal.lengthM());
    });
  }

  private static void point(PlacedHoldPoint point, JsonOutput json) throws IOException {
    json.word("id", point.id());
    json.word("before", point.before());
    json.word("check", point.check());
    json.word("ifFails", point.ifFails());
    json.words("steps", point.steps());
    json.wordOrNull("locks", point.locks());
  }

  private static void day(CrewJob job, int day, JsonOutput json) throws IOException {
    CrewPlan plan = job.plan();
    json.count("day", day);
    json.wordOrNull("date", job.date(day));
    json.objects("tasks", plan.on(day), task -> {
      json.word("step", task.step().id());
      json.number("from", task.from());
      json.number("to", task.to());
      json.flag("begins", task.begins());
      json.flag("ends", task.ends());
    });
    json.objects("carryUp", CarryUp.of(plan.begun(day), job.takeoff().quantities()).items(), item -> {
      json.word("amount", item.amount());
      json.word("what", item.what());
    });
  }
}
