package org.seamledger.sequence;

import java.util.List;
import java.util.Optional;
import org.seamledger.measure.Unit;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.physics.Cure;
import org.seamledger.quantity.system.CrewSettings;
import org.seamledger.quantity.system.CureKind;
import org.seamledger.weather.SealingWindows;

/**
 * The steps on the days of one crew that works together, one step after the other: an estimate by the rates of the roof system. A step
 * that would end after work goes on the next morning. A locked step waits until the beads under it have stood, day and night; where the
 * weather is known, as long as it takes in it, and what is sealed is done while all its sealants may be applied, on several days where one
 * window is too short. Meanwhile the crew does what comes next in the list, and waits only where nothing is left that it could do.
 *
 * @param people in the crew
 * @param holdHours how long upright beads stand before they are looked at and covered, at the site's air
 * @param waits of the crew, in their order
 * @param holds when locked steps may be looked at and begun, in the order of their beads
 */
public record CrewPlan(int people, double holdHours, List<Task> tasks, List<Wait> waits, List<Hold> holds) {

  private static final double SECONDS_PER_HOUR = 3600;

  public CrewPlan {
    tasks = List.copyOf(tasks);
    waits = List.copyOf(waits);
    holds = List.copyOf(holds);
  }

  /**
   * Work on one step on one day.
   *
   * @param day from 1
   * @param from hour of the day
   * @param to likewise
   * @param begins false where it goes on from an earlier task
   * @param ends false where it goes on in a later one
   */
  public record Task(int day, double from, double to, Step step, boolean begins, boolean ends) {
  }

  /**
   * A time in which the crew can do nothing but wait for a step: from an hour of a day to an hour of a day.
   *
   * @param weather whether it waits for weather to seal in, and not for beads to stand
   */
  public record Wait(int day, double from, int untilDay, double until, Step step, boolean weather) {
  }

  /** A locked step, when its last bead was gunned, and from when on it may be looked at and covered. */
  public record Hold(Step step, int day, double gunned, int readyDay, double ready) {
  }

  /**
   * @param people 0 for as many as the roof system says
   * @param windows the weather from the first day's midnight or later on; none where it isn't known
   */
  public static CrewPlan of(JobSequence sequence, RoofSystem system, int people, Optional<SealingWindows> windows) {
    CrewSettings crew = people == 0 ? system.crew() : with(system.crew(), people);
    return new CrewSchedule(sequence, crew, holdHours(system), windows).plan();
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

  /** The steps that are begun on a day, in their order. */
  public List<Step> begun(int day) {
    return on(day).stream().filter(Task::begins).map(Task::step).toList();
  }
}
