package org.seamledger.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamledger.source.KnownServers;
import org.seamledger.source.ModelServer;
import org.seamledger.source.ModelServerException;
import org.seamledger.source.ServedProject;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(name = "projects", description = "List the projects and revisions on servers of models.",
    footer = {"", "A model there is analysed by: seamledger analyze \"server:NAME/PROJECT@REVISION\"",
        "Exit status: 0 done; 2 the command line or the list of servers is wrong; 3 a server can't be asked."})
final class ProjectsCommand implements Task {

  @Parameters(arity = "0..1", paramLabel = "SERVER", description = "A server of the list (default: all of them).")
  private String server;

  @Mixin
  private ServersChoice servers;

  @Option(names = "--format", paramLabel = "FORM", defaultValue = "text",
      description = "text for people, json for programs (default: text).")
  private ProjectList.Form form;

  @Override
  public int run(Session session) {
    KnownServers known = servers.list().orElseThrow(
        () -> new UsageException("name the list of servers that may be asked: --servers FILE or SEAMLEDGER_SERVERS"));
    if (server != null && !known.names().contains(server)) {
      throw new UsageException("the list of servers has none named " + server + "; it has " + String.join(", ", known.names()));
    }
    List<ProjectList.Server> found = new ArrayList<>();
    int status = ExitStatus.DONE;
    for (String name : server == null ? known.names() : List.of(server)) {
      try {
        found.add(ask(known, name));
      } catch (ModelServerException e) {
        session.err().println("seamledger: " + e.getMessage());
        // What the operator can mend is told before what only waiting helps against.
        boolean isList = e.reason() == ModelServerException.Reason.NOT_SET_UP;
        status = isList || status == ExitStatus.USAGE ? ExitStatus.USAGE : ExitStatus.UNREADABLE;
      }
    }
    session.print(Optional.empty(), out -> form.write(found, out));
    return status;
  }

  private static ProjectList.Server ask(KnownServers known, String name) {
    try (ModelServer connected = known.connect(name)) {
      List<ProjectList.Project> projects = new ArrayList<>();
      for (ServedProject project : connected.projects()) {
        projects.add(new ProjectList.Project(project, connected.revisions(project.id())));
      }
      return new ProjectList.Server(name, known.address(name), known.user(name), projects);
    }
  }
}
