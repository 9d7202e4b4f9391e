package org.seamledger.queue;

import java.time.Duration;

/**
 * What a worker takes on.
 *
 * @param threads analyses at once
 * @param perProject most analyses of one project at once, in all workers together
 * @param longest that one analysis may take
 * @param grace how long one that was told to end may go on before the process ends with it
 * @param kept how long a file of the shared folder stays that no analysis refers to
 * @param heartbeat how often a worker says that it is alive; silent for four times as long it is taken for dead
 */
public record WorkerLimits(int threads, int perProject, Duration longest, Duration grace, Duration kept, Duration heartbeat) {

  /** One at a time, half an hour at most. */
  public static WorkerLimits standard() {
    return new WorkerLimits(1, Integer.MAX_VALUE, Duration.ofMinutes(30), Duration.ofSeconds(30), Duration.ofDays(7),
        Duration.ofSeconds(1));
  }

  public WorkerLimits threads(int n) {
    return new WorkerLimits(n, perProject, longest, grace, kept, heartbeat);
  }

  public WorkerLimits perProject(int most) {
    return new WorkerLimits(threads, most, longest, grace, kept, heartbeat);
  }

  public WorkerLimits lasting(Duration most, Duration afterwards) {
    return new WorkerLimits(threads, perProject, most, afterwards, kept, heartbeat);
  }

  public WorkerLimits keeping(Duration time) {
    return new WorkerLimits(threads, perProject, longest, grace, time, heartbeat);
  }
}
