package gapwise.load;

import gapwise.search.BareLucene.Found;
import io.javalin.Javalin;
import java.io.IOException;
import java.util.List;

/**
 * The bare searches behind the same web server, answered as plain lines, so that both are asked
 * over the network in the same way.
 */
final class BareServer implements AutoCloseable {
  private final Javalin javalin;

  private BareServer(Javalin javalin) {
    this.javalin = javalin;
  }

  /** A search on the bare index. */
  @FunctionalInterface
  interface Search {
    Found of(Asked asked) throws IOException;
  }

  /** Answers the searches one after the other, as often as it is asked. */
  static BareServer start(List<Asked> asked, Search search) {
    Javalin javalin =
        Javalin.create(
            config -> {
              config.startup.showJavalinBanner = false;
              config.startup.showOldJavalinVersionWarning = false;
              config.startup.startupWatcherEnabled = false;
              config.routes.get(
                  "/{number}",
                  context -> {
                    int number = Integer.parseInt(context.pathParam("number"));
                    context.result(lines(search.of(asked.get(number))));
                  });
            });
    javalin.start("127.0.0.1", 0);
    return new BareServer(javalin);
  }

  private static String lines(Found found) {
    StringBuilder lines = new StringBuilder();
    found
        .hits()
        .forEach(hit -> lines.append(hit.studyId()).append(' ').append(hit.armId()).append('\n'));
    found
        .counts()
        .forEach((name, count) -> lines.append(name).append(' ').append(count).append('\n'));
    return lines.toString();
  }

  int port() {
    return javalin.port();
  }

  @Override
  public void close() {
    javalin.stop();
  }
}
