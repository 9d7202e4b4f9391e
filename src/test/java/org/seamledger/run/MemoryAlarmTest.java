package org.seamledger.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.MemoryUsage;
import java.util.List;
import org.junit.jupiter.api.Test;

class MemoryAlarmTest {

  private MemoryUsage now;
  private final MemoryAlarm alarm = new MemoryAlarm(List.of(() -> null, () -> now));

  private static MemoryUsage used(long percent) {
    return new MemoryUsage(0, percent, 100, 100);
  }

  @Test
  void ringsAtTheThirdLookInARowAtAFullPool() {
    now = used(94);
    assertThat(alarm.rings()).isFalse();
    assertThat(alarm.rings()).isFalse();
    assertThat(alarm.rings()).isTrue();
    assertThat(alarm.rings()).as("who was ended gets time to let go").isFalse();
  }

  @Test
  void aLookAtRoomBeginsAnew() {
    for (int i = 0; i < 10; i++) {
      now = used(i % 3 == 2 ? 93 : 99);
      assertThat(alarm.rings()).isFalse();
    }
  }

  @Test
  void aPoolWithoutALimitIsNeverFull() {
    now = new MemoryUsage(0, 99, 99, -1);
    for (int i = 0; i < 5; i++) {
      assertThat(alarm.rings()).isFalse();
    }
  }
}
