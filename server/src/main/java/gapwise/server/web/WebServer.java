package gapwise.server.web;

import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.search.StudySearch;
import gapwise.server.api.Api;
import gapwise.server.home.Evidence;
import gapwise.server.home.Hold;
import gapwise.server.home.Home;
import gapwise.server.job.ImportJobs;
import gapwise.server.page.Assets;
import gapwise.server.page.BySizePage;
import gapwise.server.page.CasePage;
import gapwise.server.page.ClaimPage;
import gapwise.server.page.ErrorPage;
import gapwise.server.page.EvidencePage;
import gapwise.server.page.FunnelPage;
import gapwise.server.page.ImportPage;
import gapwise.server.page.MapPage;
import gapwise.server.page.MethodPage;
import gapwise.server.page.PooledPage;
import gapwise.server.page.SelectedValues;
import gapwise.server.page.Sites;
import gapwise.server.page.StudiesPage;
import gapwise.server.page.StudyPage;
import gapwise.server.page.SuggestPart;
import gapwise.server.page.Templates;
import gapwise.server.route.EvidenceRoutes;
import gapwise.server.route.Routes;
import gapwise.server.security.Headers;
import gapwise.server.security.SameOrigin;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.config.SizeUnit;
import io.javalin.http.ContentTooLargeResponse;
import io.javalin.http.Context;
import java.time.Clock;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;

/** The web server over one open home: pages and API, every route by hand. */
public final class WebServer implements AutoCloseable {
  /** Largest request in bytes: an extraction workbook of 100,000 rows is about a tenth of it. */
  static final long LARGEST_REQUEST_BYTES = 128L * 1024 * 1024;

  private static final long LARGEST_BODY_IN_MEMORY_BYTES = 8L * 1024 * 1024;

  private final Javalin javalin;

  private final ImportJobs jobs;

  private WebServer(Javalin javalin, ImportJobs jobs) {
    this.javalin = javalin;
    this.jobs = jobs;
  }

  /**
   * Starts to answer.
   *
   * @param host address to listen on; a loopback address keeps it to this machine
   * @param port port to listen on; 0 takes a free one
   */
  public static WebServer start(Home home, String host, int port, String version) {
    Templates templates = new Templates();
    Assets assets = new Assets();
    Sites anyState = new Sites(assets, () -> holdsInvented(home), home::notice, version);
    ImportJobs jobs = new ImportJobs(home.base(), home.folder().resolve("uploads"));
    SameOrigin sameOrigin = new SameOrigin(host);
    Javalin javalin =
        Javalin.create(
            config -> {
              limits(config);
              RoutesConfig routes = config.routes;
              routes.before(Headers::on);
              routes.before(sameOrigin::check);
              routes.before(WebServer::refuseTooLarge);
              assets.addTo(routes);
              new EvidenceRoutes(home, pages(home, templates, assets, jobs, version)).addTo(routes);
              new Failures(new ErrorPage(templates, anyState)).addTo(routes);
            });
    javalin.start(host, port);
    return new WebServer(javalin, jobs);
  }

  private static boolean holdsInvented(Home home) {
    try (Hold hold = home.hold()) {
      return hold.evidence().hasInvented();
    }
  }

  /** Every page and every route of the API, made for one state of the evidence base. */
  private static BiConsumer<Evidence, Routes> pages(
      Home home, Templates templates, Assets assets, ImportJobs jobs, String version) {
    return (evidence, routes) -> {
      Sites sites = new Sites(assets, evidence::hasInvented, home::notice, version);
      Answers answers = evidence.answers();
      StudySearch search = evidence.search();
      Edition edition = evidence.edition(version);
      new EvidencePage(templates, sites, search, evidence.studies()).addTo(routes);
      new StudyPage(templates, sites, evidence.studies()).addTo(routes);
      new StudiesPage(
              templates,
              sites,
              search,
              evidence::studies,
              new SelectedValues(evidence.selector()),
              Clock.systemUTC())
          .addTo(routes);
      new SuggestPart(templates, search).addTo(routes);
      new PooledPage(templates, sites, search, answers, edition).addTo(routes);
      new FunnelPage(templates, sites, answers, edition).addTo(routes);
      new BySizePage(templates, sites, search, answers, edition).addTo(routes);
      new MapPage(templates, sites, search, evidence::study, edition).addTo(routes);
      new CasePage(templates, sites, answers, edition).addTo(routes);
      new ClaimPage(templates, sites, search, evidence.claims(), edition).addTo(routes);
      new ImportPage(templates, sites, jobs, evidence::study).addTo(routes);
      new MethodPage(templates, sites).addTo(routes);
      new Api(evidence, jobs, home::notice, edition).addTo(routes);
    };
  }

  private static void limits(JavalinConfig config) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.http.prefer405over404 = true;
    config.http.maxRequestSize = LARGEST_BODY_IN_MEMORY_BYTES;
    config.jetty.multipartConfig.maxFileSize(LARGEST_REQUEST_BYTES, SizeUnit.BYTES);
    config.jetty.multipartConfig.maxTotalRequestSize(LARGEST_REQUEST_BYTES, SizeUnit.BYTES);
    config.jetty.multipartConfig.maxInMemoryFileSize(1, SizeUnit.MB);
  }

  private static void refuseTooLarge(Context context) {
    if (context.contentLength() > LARGEST_REQUEST_BYTES) {
      throw new ContentTooLargeResponse();
    }
  }

  /** Every address that is answered, as method and path, such as "GET /studies/{id}". */
  Set<String> routes() {
    return javalin.unsafe.internalRouter.allHttpHandlers().stream()
        .map(parsed -> parsed.endpoint.method.name() + " " + parsed.endpoint.path)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** The port that is listened on. */
  public int port() {
    return javalin.port();
  }

  @Override
  public void close() {
    javalin.stop();
    jobs.close();
  }
}
