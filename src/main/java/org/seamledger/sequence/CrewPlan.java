package org.seamledger.sequence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.TreeSet;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.physics.Cure;
import org.seamledger.quantity.system.CrewSettings;
import org.seamledger.quantity.system.CureKind;
import org.seamledger.measure.Unit;

/**
 * The steps on the days of one crew that works together, one step after the other: an estimate by the rates of the roof system, without
 * weather. A step that would end after work goes on the next morning. A locked step waits until the beads under it have stood, day and
 * night; meanwhile the crew does what comes next in the list, and waits only where nothing is left that it could do.
 *
 * @param people in the crew
 * @param holdHours how long upright beads stand before they are looked at and covered, at the site's air
 * @param waits of the crew, in their order
 */
public record CrewPlan(int people, double holdHours, List<Task> tasks, List<Wait> waits) {

  private static final double DAY = 24;
  private static final double MOMENT = 1e-9;
  private static final double SECONDS_PER_HOUR = 3600;

  public CrewPlan {
    tasks = List.copyOf(tasks);
    waits = List.copyOf(waits);
  }

  /**
   * Work on one step on one day.
   *
   * @param day from 1
   * @param from hour of the day
   * @param to likewise
   * @param begins false where it goes on from the day before
   * @param ends false where it goes on the next day
   */
  public record Task(int day, double from, double to, Step step, boolean begins, boolean ends) {
  }

  /** A time in which the crew can do nothing but wait for a step: from an hour of a day to an hour of a day. */
  public record Wait(int day, double from, int untilDay, double until, Step step) {
  }

  /** @param people 0 for as many as the roof system says */
  public static CrewPlan of(JobSequence sequence, RoofSystem system, int people) {
    CrewSettings crew = people == 0 ? system.crew() : with(system.crew(), people);
    return new Schedule(sequence, crew, holdHours(system)).plan();
  }

  private static CrewSettings with(CrewSettings c, int people) {
    return new CrewSettings(people, c.day(), c.begins(), c.underlayment(), c.panels(), c.seams(), c.pan(), c.edgeMetal(), c.panelEnds(),
        c.closures(), c.cover(), c.bead(), c.corner());
  }

  /** As the data sheet says for 23 °C and 50 %, longer in drier or colder air where the sealant cures with moisture (an estimate). */
  static double holdHours(RoofSystem system) {
    double hours = system.sealant().holdTime().value() / SECONDS_PER_HOUR;
    double humidity = system.site().humidity().value();
    return system.sealant().cure() == CureKind.MOISTURE && humidity > 0
        ? hours * Math.max(1, Cure.timeFactor(system.site().installAir().in(Unit.CELSIUS), humidity)) : hours;
  }

  /** The day on which the last step ends; 0 where there is none. */
  public int days() {
    return tasks.stream().mapToInt(Task::day).max().orElse(0);
  }

  /** The tasks of a day, in their order. */
  public List<Task> on(int day) {
    return tasks.stream().filter(t -> t.day() == day).toList();
  }

  private static final class Schedule {

    private record Later(double at, int index) {
    }

    private final List<Step> steps;
    private final CrewSettings crew;
    private final double hold;
    private final double begins;
    private final double length;
    private final Map<String, Integer> index = new HashMap<>();
    private final Map<String, Double> done = new HashMap<>();
    private final int[] open;
    private final Map<Integer, List<Integer>> next = new HashMap<>();
    private final TreeSet<Integer> ready = new TreeSet<>();
    private final PriorityQueue<Later> later =
        new PriorityQueue<>((a, b) -> a.at != b.at ? Double.compare(a.at, b.at) : Integer.compare(a.index, b.index));
    private final List<Task> tasks = new ArrayList<>();
    private final List<Wait> waits = new ArrayList<>();
    private double now;

    Schedule(JobSequence sequence, CrewSettings crew, double hold) {
      this.steps = sequence.steps();
      this.crew = crew;
      this.hold = hold;
      begins = crew.begins().value() / SECONDS_PER_HOUR;
      length = Math.min(crew.day().value() / SECONDS_PER_HOUR, DAY - begins);
      open = new int[steps.size()];
      now = begins;
      for (int i = 0; i < steps.size(); i++) {
        index.put(steps.get(i).id(), i);
      }
      for (int i = 0; i < steps.size(); i++) {
        for (String before : steps.get(i).after()) {
          // What stands later in the list belongs to a cycle, which is reported.
          if (index.get(before) < i) {
            open[i]++;
            next.computeIfAbsent(index.get(before), k -> new ArrayList<>()).add(i);
          }
        }
        if (open[i] == 0) {
          ready.add(i);
        }
      }
    }

    CrewPlan plan() {
      while (!ready.isEmpty() || !later.isEmpty()) {
        while (!later.isEmpty() && later.peek().at <= now + MOMENT) {
          ready.add(later.poll().index);
        }
        if (ready.isEmpty()) {
          await(later.peek());
        } else {
          work(ready.pollFirst());
        }
      }
      return new CrewPlan(crew.people(), hold, tasks, waits);
    }

    private void await(Later first) {
      double until = working(first.at);
      if (workedHours(now, until) > MOMENT) {
        waits.add(new Wait(day(now), hour(now), day(until), hour(until), steps.get(first.index)));
      }
      now = Math.max(until, first.at);
    }

    /** Hours of work between two moments. */
    private double workedHours(double from, double to) {
      double sum = 0;
      for (double at = from; at < to - MOMENT; at = Math.min(to, nextMorning(at))) {
        sum += Math.max(0, Math.min(to, evening(at)) - at);
      }
      return sum;
    }

    private void work(int i) {
      Step step = steps.get(i);
      double left = step.work().rate().hours(step.amount(), crew);
      boolean isBegin = true;
      do {
        now = working(now);
        double part = Math.min(left, evening(now) - now);
        left = left - part < MOMENT ? 0 : left - part;
        tasks.add(new Task(day(now), hour(now), hour(now) + part, step, isBegin, left == 0));
        now += part;
        isBegin = false;
      } while (left > 0);
      done.put(step.id(), now);
      for (int n : next.getOrDefault(i, List.of())) {
        if (--open[n] == 0) {
          double at = steps.get(n).locked() ? gunned(steps.get(n)) + hold : now;
          later.add(new Later(at, n));
        }
      }
    }

    /** When the last bead that a step covers was gunned: at the end of the last step at its own place before it. */
    private double gunned(Step step) {
      return step.after().stream().filter(id -> id.startsWith(step.place() + "/")).mapToDouble(id -> done.getOrDefault(id, 0.0)).max()
          .orElse(now);
    }

    private double working(double at) {
      return at >= evening(at) - MOMENT ? nextMorning(at) : Math.max(at, Math.floor(at / DAY) * DAY + begins);
    }

    private double evening(double at) {
      return Math.floor(at / DAY) * DAY + begins + length;
    }

    private double nextMorning(double at) {
      return (Math.floor(at / DAY) + 1) * DAY + begins;
    }

    private static int day(double at) {
      return (int) Math.floor(at / DAY) + 1;
    }

    private static double hour(double at) {
      return at - Math.floor(at / DAY) * DAY;
    }
  }
}
