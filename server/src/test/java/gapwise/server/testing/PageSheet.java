package gapwise.server.testing;

import gapwise.server.testing.Chromium.Look;
import gapwise.server.testing.filled.EveryPage;
import gapwise.server.testing.filled.FilledServer;
import gapwise.server.testing.filled.FilledState;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * Draws every page of {@link PageStates}, and each with much on it, at each width, in light and in
 * dark, and on paper, into a folder with one page of all of them, {@code index.html}, to be looked
 * at whole. DEVELOPERS.md has the command.
 */
public final class PageSheet {
  /** Longer pages are cut, in pixels: what is wrong further down is wrong above as well. */
  private static final int LONGEST = 5000;

  private PageSheet() {}

  /**
   * Draws them.
   *
   * @param arguments the folder, and words of which a state's name must hold one; all without
   */
  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createDirectories(Path.of(arguments[0]).toAbsolutePath());
    List<String> wanted = List.of(arguments).subList(1, arguments.length);
    Path work = Files.createTempDirectory("pages");
    StringBuilder body = new StringBuilder();
    try (FilledServer.Started filled = FilledServer.Started.now();
        RunningServer running = RunningServer.withDemonstration(work.resolve("home"));
        Chromium browser = Chromium.open(work)) {
      for (FilledState state : EveryPage.of(running::address, filled.states()).toList()) {
        if (wanted.isEmpty() || wanted.stream().anyMatch(state.name()::contains)) {
          body.append("<h2>").append(state.name()).append("</h2>\n");
          state.open(browser);
          for (int width : PageStates.WIDTHS) {
            add(folder, browser, state.name(), width, Look.LIGHT, body);
            add(folder, browser, state.name(), width, Look.DARK, body);
          }
          add(folder, browser, state.name(), PageStates.PAPER, Look.PRINT, body);
        }
      }
    }
    Files.writeString(folder.resolve("index.html"), page(body));
  }

  private static void add(
      Path folder, Chromium browser, String state, int width, Look look, StringBuilder body)
      throws IOException {
    browser.width(width);
    browser.look(look);
    browser.settled();
    String shown = width + " " + look.name().toLowerCase(Locale.ROOT);
    String file = (state + " " + shown).replaceAll("[^a-z0-9]+", "-") + ".png";
    Files.write(folder.resolve(file), browser.picture(width, LONGEST));
    body.append(
        String.format(
            Locale.ROOT,
            "<figure><a href=\"%1$s\"><img src=\"%1$s\" width=\"%2$d\" alt=\"\"></a>"
                + "<figcaption>%3$s</figcaption></figure>%n",
            file,
            width < 600 ? 150 : 320,
            shown));
  }

  private static String page(StringBuilder body) {
    return "<!doctype html><meta charset=\"utf-8\"><title>Pages</title>"
        + "<style>body{font:14px sans-serif;background:#777;color:#fff;margin:12px}"
        + "figure{display:inline-block;margin:4px;vertical-align:top}"
        + "img{max-height:560px;object-fit:cover;object-position:top}</style>\n"
        + body;
  }
}
