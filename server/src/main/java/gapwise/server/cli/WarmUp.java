package gapwise.server.cli;

import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Hold;
import gapwise.server.home.Home;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Opens the pages that compute most once, right after the start, so that the first person does not
 * wait for the program to load itself: cold, a page of pooled bands took seconds, warm a fraction
 * of one.
 */
final class WarmUp {
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private final Home home;
  private final String address;

  /**
   * @param address where the server answers, such as "http://127.0.0.1:7070"
   */
  WarmUp(Home home, String address) {
    this.home = home;
    this.address = address;
  }

  /** Starts in the background. */
  void start() {
    Thread thread = new Thread(this::run, "warm-up");
    thread.setDaemon(true);
    thread.start();
  }

  private void run() {
    HttpClient client = HttpClient.newHttpClient();
    try {
      for (String page : pages()) {
        client.send(
            HttpRequest.newBuilder(URI.create(address + page)).timeout(PATIENCE).build(),
            HttpResponse.BodyHandlers.discarding());
      }
    } catch (IOException unreachable) {
      // Nothing is lost: the first person waits as long as without it.
      return;
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  private List<String> pages() {
    List<String> pages = new ArrayList<>(List.of("/studies", "/map"));
    mostReported().ifPresent(code -> pages.add("/by-size?outcome=" + code));
    pages.add(PagePaths.COMPARE_TABLE + "?from=4&to=8");
    return pages;
  }

  private Optional<String> mostReported() {
    try (Hold hold = home.hold()) {
      return hold
          .evidence()
          .search()
          .search(SearchRequest.EVERYTHING, StudySearch.Order.YEAR_DESCENDING, 0, 0)
          .facets()
          .stream()
          .filter(facet -> facet.filter().equals("outcomes"))
          .flatMap(facet -> facet.counts().stream())
          .map(SearchAnswer.Count::code)
          .findFirst();
    }
  }
}
