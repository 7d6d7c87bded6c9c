package gapwise.server.testing;

import gapwise.evidence.Study;
import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.exchange.KnownEvidence;
import gapwise.server.admission.Bounds;
import gapwise.server.home.Home;
import gapwise.server.security.Reach;
import gapwise.server.web.WebServer;
import gapwise.store.StorePlace;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;

/** A real server on a free port over a home of its own. */
public final class RunningServer implements AutoCloseable {
  private static final Path DEMONSTRATION =
      Path.of("..", "data-templates", "demonstration", "gapwise-demonstration.xlsx");

  private final Home home;
  private final WebServer server;
  private final HttpClient client = HttpClient.newHttpClient();

  private RunningServer(Home home) {
    this(home, Bounds.standard());
  }

  private RunningServer(Home home, Bounds bounds) {
    this(home, bounds, new Reach("127.0.0.1", false));
  }

  private RunningServer(Home home, Bounds bounds, Reach reach) {
    this.home = home;
    this.server = WebServer.start(home, reach, 0, "test", bounds);
  }

  public static RunningServer within(Bounds bounds, Path folder) {
    return new RunningServer(Home.open(folder, Clock.systemUTC()), bounds);
  }

  /** As if another server on this machine stood before it. */
  public static RunningServer behindProxy(Home home) {
    return new RunningServer(home, Bounds.standard(), new Reach("127.0.0.1", true));
  }

  public static RunningServer empty(Path folder) {
    return new RunningServer(Home.open(folder, Clock.systemUTC()));
  }

  /** With records that may be on a server of databases, which others share. */
  public static RunningServer at(StorePlace place) {
    return new RunningServer(Home.open(place, Clock.systemUTC()));
  }

  public static RunningServer withStudies(Path folder) {
    return with(folder, Invented.studies());
  }

  public static RunningServer with(Path folder, List<Study> studies) {
    Home home = Home.open(folder, Clock.systemUTC());
    home.base().saveAll(studies.iterator(), "reviewer", "for a test", List.of());
    return new RunningServer(home);
  }

  /** The invented demonstration base, its doubts let stand as the command that serves it does. */
  public static RunningServer withDemonstration(Path folder) {
    return with(folder, demonstration());
  }

  private static List<Study> demonstration() {
    Imported read = Import.read(DEMONSTRATION, KnownEvidence.NONE, key -> true, rows -> {});
    return ((Imported.Ready) read).studies();
  }

  /** What the server stands on, for what a test must write beside it. */
  public Home home() {
    return home;
  }

  public WebServer server() {
    return server;
  }

  public String address(String path) {
    return "http://127.0.0.1:" + server.port() + path;
  }

  public HttpResponse<String> get(String path) throws IOException, InterruptedException {
    return send(request(path).GET());
  }

  public HttpRequest.Builder request(String path) {
    return HttpRequest.newBuilder(URI.create(address(path)));
  }

  public HttpResponse<String> send(HttpRequest.Builder request)
      throws IOException, InterruptedException {
    return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
  }

  @Override
  public void close() {
    server.close();
    home.close();
  }
}
