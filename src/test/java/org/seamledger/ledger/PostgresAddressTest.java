package org.seamledger.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PostgresAddressTest {

  private static final String SECRET = "four-words-nobody-guesses";

  @Test
  void showsNeitherUserNorPasswordNorOtherParameters() {
    PostgresAddress a =
        PostgresAddress.of("jdbc:postgresql://db.example:5433/roofs?user=ida&password=" + SECRET + "&sslmode=require", Optional.empty(),
            Optional.empty());
    assertThat(a).hasToString("jdbc:postgresql://db.example:5433/roofs");
    assertThat(a.properties()).containsEntry("user", "ida").containsEntry("password", SECRET).containsEntry("sslmode", "require");
  }

  @Test
  void theEnvironmentWinsOverTheUrl() {
    PostgresAddress a = PostgresAddress.of("jdbc:postgresql:roofs?user=ida", Optional.of("otto"), Optional.of(SECRET));
    assertThat(a.properties()).containsEntry("user", "otto").containsEntry("password", SECRET).containsEntry("socketTimeout", "30");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"postgresql://h/d?password=" + SECRET, "jdbc:mysql://h/d?password=" + SECRET, "jdbc:postgresql://ida:" + SECRET + "@h/d",
          "jdbc:postgresql://h:port/d?password=" + SECRET})
  void aWrongUrlIsNotRepeated(String url) {
    assertThatThrownBy(() -> PostgresAddress.of(url, Optional.empty(), Optional.empty())).isInstanceOf(IllegalArgumentException.class)
        .hasMessageNotContaining(SECRET).message().hasLineCount(1);
  }

  @Test
  void aServerThatIsNotThereIsNamedWithoutThePassword(@TempDir Path folder) {
    PostgresAddress nobody =
        PostgresAddress.of("jdbc:postgresql://127.0.0.1:1/roofs?user=ida&password=" + SECRET, Optional.empty(), Optional.empty());
    assertThatThrownBy(() -> Store.open(folder, Optional.of(nobody))).isInstanceOf(LedgerException.class)
        .hasMessageStartingWith("The database jdbc:postgresql://127.0.0.1:1/roofs cannot be reached: ").hasMessageNotContaining(SECRET);
    assertThat(Store.open(folder, Optional.empty())).as("the folder was let go").satisfies(Store::close);
  }

  @Test
  void aUrlWithAPasswordIsRecognised() {
    assertThat(PostgresAddress.holdsPassword("jdbc:postgresql://h/d?password=x")).isTrue();
    assertThat(PostgresAddress.holdsPassword("jdbc:postgresql://h/d?user=a&sslpassword=x")).isTrue();
    assertThat(PostgresAddress.holdsPassword("jdbc:postgresql://h/password?user=password")).isFalse();
  }
}
