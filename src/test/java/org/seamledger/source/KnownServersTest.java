package org.seamledger.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class KnownServersTest {

  private static final String SECRET = "correct-horse";

  @TempDir
  private Path folder;

  private Path list(String permissions, String... lines) throws IOException {
    Path file = Files.writeString(folder.resolve("servers"), String.join("\n", lines) + "\n");
    return Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(permissions));
  }

  private Map<String, ServerAccess> read(Map<String, String> environment, String... lines) throws IOException {
    return new ServerList(list("rw-------", lines), environment::get).read();
  }

  private void isRefused(String message, String... lines) throws IOException {
    Path file = list("rw-------", lines);
    assertThatThrownBy(() -> KnownServers.read(file, name -> null)).isInstanceOf(ServerListException.class)
        .hasMessageStartingWith(file + ":").hasMessageContaining(message).hasMessageNotContaining(SECRET);
  }

  @Test
  void namesComeInTheirOrderWithAddresses() throws IOException {
    KnownServers servers = KnownServers.read(list("rw-r--r--", "# ours", "", "site.url = http://127.0.0.1:8082/", "site.user = roofer",
        "office-2.url=HTTPS://models.example.org/bimserver"), name -> null);
    assertThat(servers.names()).containsExactly("office-2", "site");
    assertThat(servers.address("office-2")).isEqualTo("https://models.example.org/bimserver");
    assertThat(servers.address("site")).isEqualTo("http://127.0.0.1:8082");
  }

  @Test
  void onlyNamedServersAreAsked() throws IOException {
    KnownServers servers = KnownServers.read(list("rw-r--r--", "office.url=https://models.example.org"), name -> null);
    assertThatThrownBy(() -> servers.connect("http://192.0.2.7/")).isInstanceOf(ModelServerException.class)
        .hasMessage("the list of servers has none named \"http://192.0.2.7/\"; it has office");
    assertThatThrownBy(() -> KnownServers.NONE.connect("office")).hasMessageContaining("no list of servers was given");
  }

  @Test
  void aPasswordIsTakenFromAFileThatOnlyItsOwnerReads() throws IOException {
    ServerAccess access =
        read(Map.of(), "office.url=https://models.example.org", "office.user=roofer", "office.password=a=b # c").get("office");
    assertThat(access.user()).isEqualTo("roofer");
    assertThat(access.password()).isEqualTo("a=b # c");
  }

  @ParameterizedTest
  @ValueSource(strings = {"rw-r-----", "rw----r--", "rw--w----", "rw-----w-"})
  void aPasswordInAFileThatOthersMayTouchIsRefused(String permissions) throws IOException {
    Path file = list(permissions, "office.url=https://models.example.org", "office.password=" + SECRET);
    assertThatThrownBy(() -> KnownServers.read(file, name -> null)).isInstanceOf(ServerListException.class)
        .hasMessage(file + ":2: a password may only stand in a file that nobody but its owner can read or write (chmod 600); or set "
            + "SEAMLEDGER_PASSWORD_OFFICE");
  }

  @Test
  void theEnvironmentGoesBeforeTheFile() throws IOException {
    ServerAccess access = read(Map.of("SEAMLEDGER_USER_OFFICE_2", "other", "SEAMLEDGER_PASSWORD_OFFICE_2", SECRET),
        "office-2.url=https://models.example.org", "office-2.user=roofer", "office-2.password=old").get("office-2");
    assertThat(access.user()).isEqualTo("other");
    assertThat(access.password()).isEqualTo(SECRET);
  }

  @Test
  void nothingThatCanBePrintedShowsTheSecret() throws IOException {
    Path file = list("rw-------", "office.url=https://models.example.org", "office.user=roofer", "office.password=" + SECRET);
    assertThat(KnownServers.read(file, name -> null).toString()).isEqualTo("[office (https://models.example.org)]");
    assertThat(new ServerList(file, name -> null).read().toString()).doesNotContain(SECRET);
  }

  @Test
  void limitsCanBeSet() throws IOException {
    ServerLimits limits = read(Map.of(), "a.url=https://models.example.org", "a.connect-seconds=2", "a.answer-seconds=30",
        "a.download-seconds=600", "a.max-megabytes=50").get("a").limits();
    assertThat(limits).isEqualTo(new ServerLimits(Duration.ofSeconds(2), Duration.ofSeconds(30), Duration.ofMinutes(10), 50_000_000));
    assertThat(read(Map.of(), "a.url=https://models.example.org").get("a").limits()).isEqualTo(ServerLimits.DEFAULT);
  }

  @ParameterizedTest
  @CsvSource({"http://models.example.org", "http://10.0.0.7:8080/x", "http://127.0.0.1.example.org", "http://localhost.example.org"})
  void plainHttpToAnotherMachineIsRefusedUnlessWanted(String url) throws IOException {
    isRefused(":1: a password would go over plain http to another machine", "office.url=" + url);
    assertThat(read(Map.of(), "office.url=" + url, "office.insecure=true").get("office").url()).hasToString(url);
  }

  @ParameterizedTest
  @ValueSource(strings = {"http://localhost:8082", "http://127.0.0.1", "http://[::1]:8082/bimserver"})
  void plainHttpOnThisMachineIsFine(String url) throws IOException {
    assertThat(read(Map.of(), "office.url=" + url).get("office").url()).hasToString(url);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "ftp://models.example.org", "file:///etc/passwd", "models.example.org", "https://", "https:///x", "https://a b"})
  void anAddressIsHttpWithAHost(String url) throws IOException {
    isRefused(":1: expected an address", "office.url=" + url);
  }

  @ParameterizedTest
  @ValueSource(strings = {"https://roofer:" + SECRET + "@models.example.org", "https://models.example.org/?token=" + SECRET,
      "https://models.example.org/#" + SECRET})
  void anAddressHasNoSecretInIt(String url) throws IOException {
    isRefused(":1: an address has no user", "office.url=" + url);
  }

  @Test
  void mistakesAreNamedWithTheirLine() throws IOException {
    isRefused(":2: expected name.key=value", "# list", SECRET);
    isRefused(":1: expected name.key=value", "office=https://models.example.org");
    isRefused(":1: a server's name is letters", "head office.url=https://models.example.org");
    isRefused(":1: expected one of answer-seconds", "office.pasword=" + SECRET);
    isRefused(":3: office.user stands here a second time", "office.url=https://models.example.org", "office.user=a", "office.user=b");
    isRefused(":1: server office has no office.url", "office.user=a");
    isRefused(":2: expected true or false", "office.url=http://models.example.org", "office.insecure=yes");
    isRefused(":2: expected a whole number from 1 to 604800", "office.url=https://models.example.org", "office.answer-seconds=0");
    isRefused(":1: expected a whole number from 1", "office.max-megabytes=1e9", "office.url=https://models.example.org");
    isRefused("servers a-b and a_b would share", "a-b.url=https://models.example.org", "a_b.url=https://models.example.org");
  }

  @Test
  void aFileThatIsNoListIsRefused() throws IOException {
    Path absent = folder.resolve("absent");
    assertThatThrownBy(() -> KnownServers.read(absent)).hasMessage(absent + ": there is no such list of servers");
    assertThatThrownBy(() -> KnownServers.read(folder)).isInstanceOf(ServerListException.class);
    Path latin = Files.write(folder.resolve("latin"), "büro.url=x".getBytes(StandardCharsets.ISO_8859_1));
    assertThatThrownBy(() -> KnownServers.read(latin)).hasMessageContaining("not text in UTF-8");
    Path large = Files.write(folder.resolve("large"), new byte[(1 << 20) + 1]);
    assertThatThrownBy(() -> KnownServers.read(large)).hasMessageContaining("no larger than");
  }
}
