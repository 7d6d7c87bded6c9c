package gapwise.server.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;

/**
 * A server that tests only read from, started once for all classes of a run that ask for the same
 * evidence base. Who writes starts a {@link RunningServer} of their own.
 */
public final class SharedServer implements BeforeAllCallback {
  private final String base;
  private final Function<Path, RunningServer> start;
  private Kept kept;

  private SharedServer(String base, Function<Path, RunningServer> start) {
    this.base = base;
    this.start = start;
  }

  /** Over the demonstration base, which is invented. */
  public static SharedServer withDemonstration() {
    return new SharedServer("demonstration", RunningServer::withDemonstration);
  }

  /** Over the sixteen series of {@link Invented}. */
  public static SharedServer withStudies() {
    return new SharedServer("studies", RunningServer::withStudies);
  }

  @Override
  public void beforeAll(ExtensionContext context) {
    kept =
        context
            .getRoot()
            .getStore(Namespace.create(SharedServer.class))
            .getOrComputeIfAbsent(base, key -> Kept.started(start), Kept.class);
  }

  /** What a path answers. */
  public HttpResponse<String> get(String path) throws IOException, InterruptedException {
    return kept.server.get(path);
  }

  /** A request of a path, to be completed. */
  public HttpRequest.Builder request(String path) {
    return kept.server.request(path);
  }

  /** The answer to a request. */
  public HttpResponse<String> send(HttpRequest.Builder request)
      throws IOException, InterruptedException {
    return kept.server.send(request);
  }

  /** A path with the address of the server. */
  public String address(String path) {
    return kept.server.address(path);
  }

  /** The server in its folder; both go when the run is over. */
  private record Kept(RunningServer server, Path folder) implements AutoCloseable {
    static Kept started(Function<Path, RunningServer> start) {
      try {
        Path folder = Files.createTempDirectory("gapwise-shared");
        return new Kept(start.apply(folder.resolve("home")), folder);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    @Override
    public void close() throws IOException {
      server.close();
      try (Stream<Path> all = Files.walk(folder)) {
        List<Path> deepestFirst = all.sorted(Comparator.reverseOrder()).toList();
        for (Path path : deepestFirst) {
          Files.delete(path);
        }
      }
    }
  }
}
