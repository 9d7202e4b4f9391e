package org.seamledger.sequence;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.TreeSet;
import org.seamledger.quantity.system.CrewSettings;
import org.seamledger.sequence.CrewPlan.Hold;
import org.seamledger.sequence.CrewPlan.Task;
import org.seamledger.sequence.CrewPlan.Wait;
import org.seamledger.weather.SealantClass;
import org.seamledger.weather.SealingWindows;

/** Spreads steps over days: hours are counted from the first midnight on. */
final class CrewSchedule {

  private static final double DAY = 24;
  private static final double MOMENT = 1e-9;
  private static final double SECONDS_PER_HOUR = 3600;

  private record Later(double at, int index, boolean weather) {
  }

  private final List<Step> steps;
  private final CrewSettings crew;
  private final double hold;
  private final Optional<SealingWindows> windows;
  private final double begins;
  private final double length;
  private final Map<String, Integer> index = new HashMap<>();
  private final Map<String, Double> done = new HashMap<>();
  private final int[] open;
  private final Map<Integer, List<Integer>> next = new HashMap<>();
  /** Hours that a step still needs which the weather has stopped. */
  private final Map<Integer, Double> left = new HashMap<>();
  private final TreeSet<Integer> ready = new TreeSet<>();
  private final PriorityQueue<Later> later =
      new PriorityQueue<>((a, b) -> a.at != b.at ? Double.compare(a.at, b.at) : Integer.compare(a.index, b.index));
  private final List<Task> tasks = new ArrayList<>();
  private final List<Wait> waits = new ArrayList<>();
  private final List<Hold> holds = new ArrayList<>();
  private double now;

  CrewSchedule(JobSequence sequence, CrewSettings crew, double hold, Optional<SealingWindows> windows) {
    this.windows = windows;
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
        int next = ready.pollFirst();
        double begins = begins(steps.get(next));
        if (begins > working(now) + MOMENT) {
          later.add(new Later(begins, next, true));
        } else {
          work(next);
        }
      }
    }
    return new CrewPlan(crew.people(), hold, tasks, waits, holds);
  }

  private void await(Later first) {
    double until = working(first.at);
    if (workedHours(now, until) > MOMENT) {
      waits.add(new Wait(day(now), hour(now), day(until), hour(until), steps.get(first.index), first.weather));
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

  /** When a step can begin: in hours of work, in weather for all that it seals. */
  private double begins(Step step) {
    Set<SealantClass> classes = classes(step);
    double at = working(now);
    while (windows.isPresent() && !classes.isEmpty()) {
      double open = windows.get().open(classes, at);
      if (open <= at + MOMENT) {
        break;
      }
      at = working(open);
    }
    return at;
  }

  /** When what a step seals may no longer be applied, from a moment on at which it may. */
  private double closes(Step step, double at) {
    Set<SealantClass> classes = classes(step);
    return classes.isEmpty() ? Double.POSITIVE_INFINITY : windows.map(w -> w.closes(classes, at)).orElse(Double.POSITIVE_INFINITY);
  }

  private static Set<SealantClass> classes(Step step) {
    Set<SealantClass> classes = EnumSet.noneOf(SealantClass.class);
    step.seals().forEach(s -> classes.add(SealantClass.of(s.form())));
    return classes;
  }

  /** Works on a step over its evenings until it is done, or until the weather stops it: then it goes on when it may, and others before. */
  private void work(int i) {
    Step step = steps.get(i);
    double rest = left.getOrDefault(i, step.work().rate().hours(step.amount(), crew));
    boolean isBegin = !left.containsKey(i);
    do {
      now = working(now);
      double part = Math.min(rest, Math.min(evening(now), closes(step, now)) - now);
      rest = rest - part < MOMENT ? 0 : rest - part;
      tasks.add(new Task(day(now), hour(now), hour(now) + part, step, isBegin, rest == 0));
      now += part;
      isBegin = false;
      if (rest > 0 && begins(step) > working(now) + MOMENT) {
        left.put(i, rest);
        ready.add(i);
        return;
      }
    } while (rest > 0);
    done.put(step.id(), now);
    for (int n : next.getOrDefault(i, List.of())) {
      if (--open[n] == 0) {
        later.add(new Later(steps.get(n).locked() ? held(steps.get(n)) : now, n, false));
      }
    }
  }

  private double held(Step step) {
    double gunned = gunned(step);
    double ready = windows.map(w -> w.covered(gunned, hold)).orElse(gunned + hold);
    holds.add(new Hold(step, day(gunned), hour(gunned), day(ready), hour(ready)));
    return ready;
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
